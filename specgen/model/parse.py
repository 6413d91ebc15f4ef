"""From the text trees of a folder to the typed specification, with every fault of shape located.

Called by the commands through `load`. All faults of all files come in one run: a broken product does not hide a broken job.
"""

from __future__ import annotations

import gc
from collections.abc import Iterator
from collections.abc import Mapping as Known
from contextlib import contextmanager
from dataclasses import dataclass, field, replace
from pathlib import Path as FilePath
from typing import Any, cast

from specgen.findings import Finding, Place, Severity
from specgen.model.based_on import CLIMATE, Bases
from specgen.model.field_types import nearest_of
from specgen.model.format_read import brought_up
from specgen.model.guarded import Guarded, GuardedProject, values_read
from specgen.model.kept import kept
from specgen.model.most_findings import first_of_each_file
from specgen.model.node import Node
from specgen.model.pictured import pictured
from specgen.model.project import Project
from specgen.model.references import joined
from specgen.model.shape import entry_name, id_of, is_empty, plain, read_record, shape_finding
from specgen.model.shared_range import OF_THE_MAKER, RangeUsed, taken, with_makers
from specgen.model.spec import KINDS, LIST_KINDS, Spec
from specgen.model.system import System
from specgen.model.walk import Path
from specgen.pictures.prepared import Prepared
from specgen.source.places import Places
from specgen.source.project import Sources
from specgen.source.reader import FINDING_LIMIT
from specgen.source.shared_range import read_with_range
from specgen.source.tree import Mapping, Sequence
from specgen.source.tree import Node as Tree


@dataclass(frozen=True, slots=True)
class Based:
    """What a record is based on, the nearest record first, and the paths within it that stayed with that one."""

    on: tuple[Path, ...]
    left: tuple[Path, ...]


@dataclass
class Loaded:
    """What a folder holds: the specification as far as it is whole, the faults, and where each value stands.

    `spec` is None where there is no whole project source to print with. `judged` is what rules may judge, the same where all
    is whole, else guarded; `partial` are the records in it that rest on something broken, by kind. `unread` names files that
    were not read to their end, `ids` every id of a kind that stands in the sources, `bases` the records that are based on another.
    Of a shared range that the project names what is used stands among the rest, as if it stood in the folder; `range` tells it
    from that.
    """

    spec: Spec | None = None
    judged: Spec | None = None
    partial: dict[str, dict[str, Any]] = field(default_factory=dict)
    unread: tuple[str, ...] = ()
    ids: dict[str, frozenset[str]] = field(default_factory=dict)
    findings: list[Finding] = field(default_factory=list)
    places: dict[Path, Places] = field(default_factory=dict)
    bases: dict[Path, Based] = field(default_factory=dict)
    range: RangeUsed | None = None

    def place(self, path: Path) -> Place:
        """Where a value stands; for an absent one, the place it is missing in."""
        return self._places_of(path).place(path)

    def missing(self, path: Path) -> str | None:
        """The first name on the path that the source does not have."""
        return self._places_of(path).missing(path)

    def of_range(self, kind: str, key: str) -> bool:
        """True for a record that stands in the shared range."""
        return self.range is not None and (kind, key) in self.range.used

    def taken_from(self, path: Path) -> Path | None:
        """The record that states a value of a record that is based on it; None where a record states it itself."""
        places = self.places.get(path[:2]) or self.places.get(path[:1])
        return places.record(path) if places is not None else None

    def stayed(self, path: Path) -> str:
        """What there is to say of a missing value that the base of its record has, and that is carried over only by name."""
        based, steps = self.bases.get(path[:2]), path[2:]
        for left in based.left if based is not None else ():
            if left[: len(steps)] == steps or steps[: len(left)] == left:
                assert based is not None  # noqa: S101  # something of it was left
                return f"; {based.on[0][-1]} states it, and {'.'.join(left)} under including carries it over"
        return ""

    def _places_of(self, path: Path) -> Places:
        return self.places[path[:2]] if path[:2] in self.places else self.places[path[:1]]


def load(folder: FilePath) -> Loaded:
    """Read and parse every source of a folder. Raises SourceError where the folder cannot be read at all."""
    with without_collector():
        return parse(read_with_range(folder))


@contextmanager
def without_collector(*, to_the_end: bool = False) -> Iterator[None]:
    """Reading and judging make a great many records and no rubbish: looking for it all the while nearly doubles the time.

    A command keeps them `to_the_end` of the process: they are not gone through afterwards either.
    """
    was_on = gc.isenabled()
    gc.disable()
    try:
        yield
    finally:
        if to_the_end:
            gc.freeze()
        if was_on:
            gc.enable()


def parse(sources: Sources) -> Loaded:
    """The typed specification of sources already read."""
    loaded = Loaded(findings=list(sources.findings))
    restated, faults = brought_up(sources)
    files, pictures, unfit = pictured(restated, sources.beside)
    files, lost = kept(files, sources.beside)
    faults += (*unfit, *lost)
    elsewhere: Known[str, frozenset[str]] = {}
    if sources.range is not None:
        shared = taken(sources, files)
        if isinstance(shared, Finding):
            loaded.findings.append(shared)
            sources = replace(sources, range=None, lost=shared.place.text.strip())
        else:
            files = (*with_makers(files, shared.of_maker), *shared.files)
            pictures |= shared.pictures
            elsewhere, loaded.range = shared.range.unused, shared.range
            faults += shared.findings
    gathered = _Gathered(loaded, Bases(files, unread=bool(sources.unread)), pictures, elsewhere)
    for source in files:
        if isinstance(source.root, Mapping):
            gathered.take_file(source.root, Places(source))
    gathered.take_coloured()
    gathered.close(sources)
    loaded.findings += (*faults, *gathered.bases.findings)
    read = len(sources.findings)
    loaded.findings[read:] = first_of_each_file(loaded.findings[read:])
    return loaded


class _Gathered:
    """Records and ids over all files, before the references are joined."""

    def __init__(
        self, loaded: Loaded, bases: Bases, pictures: dict[str, Prepared], elsewhere: Known[str, frozenset[str]]
    ) -> None:
        self.loaded = loaded
        self.bases, self.pictures, self.elsewhere = bases, pictures, elsewhere
        self.records: dict[str, dict[str, Any]] = {kind: {} for kind in LIST_KINDS}
        self.ids: dict[str, dict[str, str]] = {kind: {} for kind in KINDS}
        self.projects: list[tuple[Tree, Places]] = []
        self.misspelt = False
        self._before_file = 0

    def take_file(self, root: Mapping, places: Places) -> None:
        """Every block at the top level of one file."""
        self._before_file = len(self.loaded.findings)
        for kind, tree in root.entries.items():
            here = (kind,)
            if kind not in KINDS:
                what, remedy = f"{kind} is not a kind of source", nearest_of(kind, list(KINDS))
                self._fault("MOD001", here, places.key_place(here), what, remedy)
                self.misspelt = self.misspelt or remedy == "did you mean project?"
            elif kind == "project":
                self.projects.append((tree, places))
            elif is_empty(tree):
                self._fault("MOD007", here, places.key_place(here), f"{kind} has no value")
            elif isinstance(tree, Sequence):
                if not tree.items:
                    self._fault("MOD007", here, places.key_place(here), f"{kind} has no entry")
                for index, entry in enumerate(tree.items):
                    self._entry(kind, entry, index, places)
            else:
                self._fault("MOD004", here, places.place(here), f"{kind} must be a list, each entry with a hyphen")

    def _entry(self, kind: str, entry: Tree, index: int, places: Places) -> None:
        known = id_of(entry)
        path = (kind, entry_name(entry, index))
        if known is not None:
            before = self.ids[kind].get(known.lower())
            if before is not None:
                what = (
                    f"the id {known} is used twice in {kind}"
                    if before == known
                    else f"{before} and {known} differ only in capitals"
                )
                self._fault("MOD006", path, places.place((kind, f"[{index}]", "id")), what)
                return
            self.ids[kind][known.lower()] = known
        self.loaded.places[path] = places
        if len(self.loaded.findings) - self._before_file > FINDING_LIMIT:
            # no more of them are listed; the ids are still taken, or what refers to them would seem lost
            return
        record = self._record(KINDS[kind], entry, path, places)
        if record is not None and known is not None and kind in LIST_KINDS:
            self.records[kind][known] = record

    def _record(self, model: type[Node], entry: Tree, path: Path, places: Places) -> Node | None:
        """A record read with what it carries over from others; nothing where that cannot be told."""
        if not isinstance(entry, Mapping):
            return self._read(model, entry, path, places)
        found = self.bases.resolved(entry, path, places)
        if not found.is_whole:
            return None
        self.loaded.places[path] = found.places
        if found.bases:
            self.loaded.bases[path] = Based(found.bases, found.left)
        record, findings = read_record(model, found.tree, path, found.places)
        own = found.tree is entry
        self.loaded.findings += findings if own else (self._of_base(finding) for finding in findings)
        return record

    def take_coloured(self) -> None:
        """Systems that differ from another by the coats of an item, as if they stood in the sources."""
        for found in self.bases.coloured:
            key = id_of(found.tree)
            assert key is not None  # noqa: S101  # it was given one
            path = ("systems", key)
            self.ids["systems"][key.lower()] = key
            self.loaded.places[path] = found.places
            self.loaded.bases[path] = Based(found.bases, ())
            record, findings = read_record(System, found.tree, path, found.places)
            self.loaded.findings += (self._of_base(finding) for finding in findings)
            if record is not None:
                self.records["systems"][key] = record

    def _of_base(self, finding: Finding) -> Finding:
        """A fault in what is carried over has one cause with that of the record which states it."""
        path = tuple(finding.path.split("."))
        base = self.loaded.taken_from(path)
        if base is None:
            return replace(finding, remedy=finding.remedy + self.loaded.stayed(path))
        own = f"{'.'.join(path[:2])}:"
        cause = f"{'.'.join(base)}:{finding.cause.removeprefix(own)}"
        return replace(finding, cause=cause, carried_over=True)

    def close(self, sources: Sources) -> None:
        """The project, the references between records, and the specification of what is whole."""
        project = self._project(sources)
        loaded, unread = self.loaded, bool(sources.unread)
        # an id of the range that nothing names is known all the same, as the one that may have been meant
        known = {
            kind: {key.lower(): key for key in self.elsewhere.get(kind, ())} | ids for kind, ids in self.ids.items()
        }
        together = joined(self.records, known, loaded.place, unread=unread)
        loaded.findings.extend(together.findings)
        loaded.unread, loaded.partial = sources.unread, together.partial
        loaded.ids = {kind: frozenset(self.ids[kind].values()) for kind in LIST_KINDS}
        if project is not None:
            loaded.spec = Spec(project, **together.whole, pictures=self.pictures)
        rest = {kind: loaded.ids[kind] - {*whole} for kind, whole in together.whole.items()}
        if loaded.spec is not None and not unread and not any(rest.values()):
            loaded.judged = loaded.spec
            return
        guarded = {
            kind: Guarded(kind, whole, partial, rest[kind] - {*partial}, together.lost[kind], loaded.unread)
            for (kind, whole), partial in zip(together.whole.items(), together.partial.values(), strict=True)
        }
        loaded.judged = Spec(
            project if project is not None else self._part_of_project(sources), **guarded, pictures=self.pictures
        )

    def _part_of_project(self, sources: Sources) -> Project:
        """What was read of a project with faults; nothing where there is none, or more than one."""
        every = frozenset(Project.model_fields)
        if len(self.projects) != 1 or not isinstance(tree := self.projects[0][0], Mapping):
            return cast(Project, GuardedProject({}, every))
        faults = [f for f in self.loaded.findings if f.path.startswith("project.") and f.severity is Severity.ERROR]
        barred = {f.path.split(".")[1] for f in faults} & every
        if any(f.id == "MOD001" and f.path.count(".") == 1 for f in faults):
            # the key that nobody knows was meant for one of those that are not there
            barred |= every - {*tree.entries}
        if sources.lost:
            barred |= {*OF_THE_MAKER} - {*tree.entries}
        return cast(Project, GuardedProject(values_read(Project, plain(tree), barred), barred))

    def _project(self, sources: Sources) -> Project | None:
        here = ("project",)
        if len(self.projects) != 1:
            for _, places in self.projects:
                self._fault(
                    "MOD008", here, places.key_place(here), f"the folder has {len(self.projects)} project sources"
                )
            # where it stands under a misspelt key, or may stand in a file not read to its end, that is told already
            if not (self.projects or self.misspelt or sources.unread):
                first = sources.files[0].name if sources.files else "project.yaml"
                self._fault("MOD008", here, Place(first, 1, 1, 2), "no file of the folder has a project source")
            return None
        tree, places = self.projects[0]
        self.loaded.places[here] = places
        record, findings = read_record(Project, tree, here, places)
        if sources.lost:
            # what is left to a range that could not be read is not missing
            missing = {f"project.{name}" for name in OF_THE_MAKER}
            findings = [f for f in findings if not (f.id == "MOD002" and f.path in missing)]
        self.loaded.findings.extend(findings)
        return _of_itself(record) if isinstance(record, Project) else None

    def _read(self, model: type[Node], tree: Tree, path: Path, places: Places) -> Node | None:
        record, findings = read_record(model, tree, path, places)
        self.loaded.findings.extend(findings)
        return record

    def _fault(self, fault_id: str, path: Path, place: Place, what: str, remedy: str = "") -> None:
        self.loaded.findings.append(shape_finding(fault_id, path, place, what, remedy))


def _of_itself(project: Project) -> Project:
    """The project without what its jobs carry over: that is stated by each of them from here on."""
    if not project.states(CLIMATE):
        return project
    rest = project.model_copy(update={CLIMATE: None})
    rest.model_fields_set.discard(CLIMATE)
    return rest
