"""What a folder takes of its shared range: the records that its own lead to, read as if they stood here, and nothing else of it.

Called by `parse`. Of the range's project hold only values of the maker that the project leaves out. A record of the range that nothing
here leads to is neither read nor judged: its faults are told in the range itself.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence, Set
from dataclasses import dataclass, field, replace
from pathlib import Path as FilePath

from specgen.findings import Finding, Severity
from specgen.model.base_named import BASE
from specgen.model.based_on import far
from specgen.model.format_read import brought_up
from specgen.model.kept import kept
from specgen.model.node import Node
from specgen.model.pictured import pictured
from specgen.model.project import Project
from specgen.model.references import referring
from specgen.model.safety_sets import SETS
from specgen.model.shape import entry_name, read_record, shape_finding
from specgen.model.spec import KINDS, LIST_KINDS
from specgen.model.walk import inner_record
from specgen.pictures.prepared import Prepared
from specgen.source.beside import Beside, NotRead
from specgen.source.places import Places
from specgen.source.project import Sources
from specgen.source.range_faults import range_fault
from specgen.source.shared_range import KEY, stated_in
from specgen.source.tree import Mapping as Group
from specgen.source.tree import Mark, Scalar, SourceFile
from specgen.source.tree import Node as Tree
from specgen.source.tree import Sequence as Listed

Address = tuple[str, str]

# who prepares a job is the customer's project; who makes the products is the same for all
OF_THE_MAKER = ("maker", "logo", "brand_colour", "emergency_phone", "users")
_KIND_OF = {model: kind for kind, model in LIST_KINDS.items()}
# jobs and what they are made to are no part of a range: a folder that is one and has jobs of its own keeps them
OWN_KINDS = frozenset({"contract_documents", "jobs", "concessions", "offers"})
_KINDS = (SETS, *(kind for kind in LIST_KINDS if kind not in OWN_KINDS))


@dataclass(frozen=True, slots=True)
class RangeUsed:
    """A range that was read: the way to it as written, its folder on the disk, what goes before the names of its files, the
    addresses of the records taken from it, the ids of the others by kind, its pictures by the values that name them, and what was
    written down of it before (`lock`, see `Sources`)."""

    named: str
    folder: FilePath
    before: str
    used: frozenset[Address] = frozenset()
    unused: Mapping[str, frozenset[str]] = field(default_factory=dict)
    pictures: frozenset[str] = frozenset()
    raw: Beside | None = None
    lock: bytes | NotRead | None = None
    watched: bool = False


@dataclass(frozen=True, slots=True)
class Taken:
    """The files of the range cut down to what is used, with no project; what of its project holds in a folder that leaves it out."""

    files: tuple[SourceFile, ...]
    of_maker: Group
    pictures: Mapping[str, Prepared]
    findings: list[Finding]
    range: RangeUsed


def taken(sources: Sources, own: Sequence[SourceFile]) -> Taken | Finding:
    """What the files `own` take of the range read with `sources`; a finding where it is none that anything can be taken from."""
    shared = sources.range
    assert shared is not None  # noqa: S101  # asked where there is one
    files, stale = brought_up(shared)
    if (fault := _project_fault(files, own)) is not None:
        return fault
    mine, there = _Entries(own), _Entries(files)
    used = _reached(mine, there)
    left_out = {name for name in OF_THE_MAKER if name not in _project(own).entries}
    done, pictures, unfit = pictured([_cut(file, used, left_out) for file in files], shared.beside)
    done, lost = kept(done, shared.beside)
    told = {places.source.name for address in used for places, _ in there.entries[address]}
    findings = [f for f in (*shared.findings, *stale) if f.severity is Severity.ERROR or f.place.file in told]
    return Taken(
        tuple(_records_of(file) for file in done),
        _far_project(done),
        pictures,
        [*findings, *_clashes(mine, there), *unfit, *lost],
        RangeUsed(
            _stated(own),
            shared.folder,
            shared.before,
            # a safety set is no record of its own: the products that name it hold what it says
            frozenset(address for address in used if address[0] in LIST_KINDS),
            {
                kind: frozenset(key for of, key in there.entries if of == kind and (of, key) not in used)
                for kind in _KINDS
            },
            frozenset(pictures),
            shared.raw,
            sources.lock,
            sources.watched,
        ),
    )


def with_makers(own: Sequence[SourceFile], of_maker: Group) -> tuple[SourceFile, ...]:
    """The files of the folder, its project with what it leaves to the range."""
    files = []
    for file in own:
        if stated_in(file) is not None:
            assert isinstance(file.root, Group)  # noqa: S101  # it holds the project
            project = file.root.entries[KEY[0]]
            assert isinstance(project, Group)  # noqa: S101  # it names the range
            whole = Group(project.entries | of_maker.entries, project.keys | of_maker.keys, project.mark)
            files.append(replace(file, root=replace(file.root, entries=file.root.entries | {KEY[0]: whole})))
        else:
            files.append(file)
    return tuple(files)


class _Entries:
    """The records of some files by their addresses; of two with one id both."""

    def __init__(self, files: Sequence[SourceFile]) -> None:
        self.entries: dict[Address, list[tuple[Places, Tree]]] = {}
        for file in files:
            places = Places(file)
            for kind in (SETS, *LIST_KINDS):
                held = file.root.entries.get(kind) if isinstance(file.root, Group) else None
                for index, tree in enumerate(held.items if isinstance(held, Listed) else ()):
                    self.entries.setdefault((kind, entry_name(tree, index)), []).append((places, tree))

    def leads_to(self, address: Address) -> Iterator[Address]:
        """The addresses a record names, and beside a product the products of its overcoating intervals."""
        for _, tree in self.entries[address]:
            yield from _named(tree, KINDS[address[0]])
            yield from _sets(tree)


def _named(tree: Tree, model: type[Node]) -> Iterator[Address]:
    if not isinstance(tree, Group):
        return
    base = tree.entries.get(BASE)
    if isinstance(base, Scalar) and (kind_of := _KIND_OF.get(model)) is not None:
        yield kind_of, base.text
    for name, kind in referring(model):
        held = tree.entries.get(name)
        if kind:
            if isinstance(held, Scalar):
                yield kind, held.text
            continue
        inner = inner_record(model, name)
        assert inner is not None  # noqa: S101  # `referring` says that it holds records
        for entry in held.items if isinstance(held, Listed) else (held,) if held is not None else ():
            yield from _named(entry, inner)


def _sets(tree: Tree) -> Iterator[Address]:
    """The safety sets that a product names."""
    hazards = tree.entries.get("hazards") if isinstance(tree, Group) else None
    named = hazards.entries.get(SETS) if isinstance(hazards, Group) else None
    for name in named.items if isinstance(named, Listed) else ():
        if isinstance(name, Scalar):
            yield SETS, name.text


def _reached(mine: _Entries, there: _Entries) -> set[Address]:
    """The records of the range that those of the folder lead to, directly or through others of the range."""
    waiting = [target for address in mine.entries for target in mine.leads_to(address)]
    waiting += [target for address in mine.entries if address[0] == "products" for target in _next_coats(mine, address)]
    taken_here = {(kind, key.lower()) for kind, key in mine.entries}
    used: set[Address] = set()
    while waiting:
        target = waiting.pop()
        known = target in used or (target[0], target[1].lower()) in taken_here
        if target in there.entries and not known and target[0] in _KINDS:
            used.add(target)
            waiting.extend(there.leads_to(target))
    return used


def _next_coats(mine: _Entries, address: Address) -> Iterator[Address]:
    """What the data sheet of a product of the folder calls by name."""
    for _, tree in mine.entries[address]:
        windows = tree.entries.get("overcoat") if isinstance(tree, Group) else None
        for window in windows.items if isinstance(windows, Listed) else ():
            named = window.entries.get("next_coat") if isinstance(window, Group) else None
            if isinstance(named, Scalar):
                yield "products", named.text


def _clashes(mine: _Entries, there: _Entries) -> Iterator[Finding]:
    """An id that stands in both folders, told at both places."""
    known = {(kind, key.lower()): (kind, key) for kind, key in mine.entries if kind in _KINDS}
    for address in there.entries:
        other = known.get((address[0], address[1].lower()))
        if other is None or address[1].startswith("["):
            continue
        what = f"the id {other[1]} is used in {other[0]} of this folder and of its range"
        for path, places in ((other, mine.entries[other][0][0]), (address, there.entries[address][0][0])):
            yield shape_finding("MOD006", path, places.place((*path, "id")), what, cause=what)


def _project_fault(files: Sequence[SourceFile], own: Sequence[SourceFile]) -> Finding | None:
    """What keeps the range from being a project of its own."""
    file = next(file for file in files if _holds_project(file))
    assert isinstance(file.root, Group)  # noqa: S101  # just found
    record, faults = read_record(Project, file.root.entries[KEY[0]], KEY[:1], Places(file))
    if record is not None:
        return None
    first = faults[0]
    place = next(Places(one).place(KEY) for one in own if stated_in(one) is not None)
    return range_fault(
        "RNG003", f"the project of the range has faults; the first is at {first.place}: {first.what}", place
    )


def _far_project(files: Sequence[SourceFile]) -> Group:
    """What is left of the project of the range, each value with where it stands."""
    file = next(file for file in files if _holds_project(file))
    tree = far(_project([file]), file, KEY[:1], [])
    assert isinstance(tree, Group)  # noqa: S101  # a group stays one
    return tree


def _holds_project(file: SourceFile) -> bool:
    return isinstance(file.root, Group) and KEY[0] in file.root.entries


def _project(files: Sequence[SourceFile]) -> Group:
    for file in files:
        held = file.root.entries.get(KEY[0]) if isinstance(file.root, Group) else None
        if isinstance(held, Group):
            return held
    return Group({}, {}, Mark(1, 1, 1))


def _stated(own: Sequence[SourceFile]) -> str:
    return next(held.text for file in own if (held := stated_in(file)) is not None)


def _cut(file: SourceFile, used: Set[Address], left_out: Set[str]) -> SourceFile:
    """The file with the records that are used and, of the project, what the folder leaves out."""
    if not isinstance(file.root, Group):
        return file
    entries: dict[str, Tree] = {}
    for kind, held in file.root.entries.items():
        if kind == KEY[0] and isinstance(held, Group):
            kept = {name: tree for name, tree in held.entries.items() if name in left_out}
            entries[kind] = Group(kept, {name: held.keys[name] for name in kept}, held.mark)
        elif kind in _KINDS and isinstance(held, Listed):
            items = tuple(item for at, item in enumerate(held.items) if (kind, entry_name(item, at)) in used)
            if items:
                entries[kind] = replace(held, items=items)
    return replace(file, root=replace(file.root, entries=entries))


def _records_of(file: SourceFile) -> SourceFile:
    if not isinstance(file.root, Group):
        return file
    return replace(
        file,
        root=replace(file.root, entries={kind: held for kind, held in file.root.entries.items() if kind != KEY[0]}),
    )
