"""The two sides of a comparison, from how a user spells them: a folder, a file in it, `git:REVISION:PATH`, an issued revision.

Called by `compare`. A further way to name a side is one entry in `_WAYS`.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence, Set
from dataclasses import dataclass, replace
from datetime import date
from pathlib import Path

from specgen.checking import check_loaded
from specgen.commands.beside import beside
from specgen.commands.decision_file import DecisionFile, decisions_beside
from specgen.commands.folder import prefix_of
from specgen.commands.git_side import sources_at
from specgen.commands.outcome import CannotRunError
from specgen.commands.register_side import issued_pdf, issued_zip, revision_at
from specgen.commands.targets import REGISTER_KEPT, kept_as
from specgen.comparing import side_of
from specgen.comparison.compare import Side
from specgen.comparison.reference_snapshot import Snapshot, reference_snapshot, side_by_side
from specgen.facts.closure import loaded_closure
from specgen.findings import Report
from specgen.issuing.candidate import subject_of
from specgen.model.job import Job
from specgen.model.parse import Loaded, parse
from specgen.model.spec import Spec
from specgen.model.walk import Path as Address
from specgen.register.failure import RegisterError
from specgen.source.characters import printable_name
from specgen.source.project import SourceError, Sources, find_project, is_large
from specgen.source.shared_range import read_with_range


@dataclass(frozen=True, slots=True)
class Named:
    """One side: how the user named it, what leads to its files, how its sources are read, and the file of decisions beside them.

    Of an issued revision `document` is its number and `revision` its own, both empty for any other side; `snapshot` is of the
    tables it was judged by, None where they are those of this program. `large` is one that is worth a process of its own.
    """

    spelling: str
    prefix: str
    read: Callable[[], Sources]
    decisions: DecisionFile | None
    snapshot: Snapshot | None = None
    document: str = ""
    revision: str = ""
    large: bool = False

    @property
    def title(self) -> str:
        """How a notice calls the side: `MS-001 B`, or as the user spelled it."""
        return f"{self.document} {self.revision}" if self.document else self.spelling

    @property
    def without_path(self) -> str:
        """The same for a customer, to whom the folders of this machine are nothing: the folder by its name, the revision by its."""
        if self.document:
            return self.title
        way, _, rest = self.spelling.partition(":")
        return rest.partition(":")[0] if way == "git" else Path(self.prefix or ".").resolve().name


def names_of(old: Named, new: Named, *, for_maker: bool) -> tuple[str, str]:
    """What both sides are called in a document for this reader, never the same."""
    names = (old.title, new.title) if for_maker else (old.without_path, new.without_path)
    first, second = (printable_name(name) for name in names)
    return (first, second) if first != second else (f"{first} (old)", f"{second} (new)")


def about(old: Named, new: Named, spec: Spec) -> Address:
    """The record that one side at least is a revision of, and the other is cut down to; empty where both are folders."""
    document = new.document or old.document
    if not document or (old.document and new.document and old.document != new.document):
        return ()
    try:
        subject = subject_of(spec, document)
    except RegisterError:
        return ()
    return ("jobs" if isinstance(subject, Job) else "products", subject.id)


def read_side(spelling: str) -> Named:
    """The sources a spelling leads to. Raises CannotRunError where there are none."""
    way, colon, rest = spelling.partition(":")
    if colon and way in _WAYS:
        return _WAYS[way](spelling, rest)
    if not spelling:
        raise CannotRunError("a side is empty; name a folder, or git:REVISION:PATH")
    path = Path(spelling)
    issued = _ISSUED.get(path.suffix.lower())
    if issued is not None and not path.is_dir():
        sources, document, revision = issued(path)
        return Named(spelling, "", lambda: sources, None, document=document, revision=revision)
    _refuse_other_than_sources(path)
    try:
        folder = find_project(path)
        decisions, large = decisions_beside(folder), is_large(folder)
        return Named(
            spelling, prefix_of(folder), lambda: replace(read_with_range(folder), watched=False), decisions, large=large
        )
    except SourceError as reason:
        raise CannotRunError(str(reason)) from reason


def _refuse_other_than_sources(path: Path) -> None:
    """A printed page beside the sources would stand for their folder, and a register for a folder that holds none."""
    named = printable_name(str(path))
    try:
        if path.is_dir():
            if kept_as(path.resolve()) == REGISTER_KEPT:
                raise CannotRunError(f"{named} is a folder of a register; name a revision, as in register:MS-001@B")
        elif path.exists() and path.suffix.lower() not in (".yaml", ".yml"):
            raise CannotRunError(
                f"{named} is no side of a comparison; name a folder of sources, a YAML file in it, git:REVISION:PATH, "
                "register:DOC@REV, or the PDF or zip of an issued revision"
            )
    except (OSError, ValueError) as error:
        raise CannotRunError(f"{named} cannot be opened: {getattr(error, 'strerror', None) or error}") from error


@dataclass(frozen=True, slots=True)
class Judged:
    """One side read and judged: what the rules say, and the side as it is compared, None where it holds no whole specification.

    `tables_read` names the tables that the document of a record looked into.
    """

    report: Report
    side: Side | None
    tables_read: Callable[[Address], Set[str]]


def judged_sides(old: Named, new: Named, on: date) -> tuple[Judged, Judged]:
    """Both sides read and judged by the rules, two large ones at the same time.

    Opposite an issued revision a folder is cut down to what that document reaches, or all else in it would seem added.
    """

    def judge_old() -> Judged:
        return _judged(_cut(parse(old.read()), old, new), on)

    def judge_new() -> Judged:
        return _judged(_cut(parse(new.read()), new, old), on)

    if old.large and new.large:
        return beside(judge_old, judge_new)
    return judge_old(), judge_new()


def _judged(loaded: Loaded, on: date) -> Judged:
    checked = check_loaded(loaded, on)

    def looked_into(record: Address) -> Set[str]:
        from specgen.issuing.tables_read import tables_read

        subject = getattr(loaded.spec, record[0]).get(record[1])
        return tables_read(loaded, subject, on) if subject is not None else frozenset()

    return Judged(checked.report, side_of(checked) if loaded.spec is not None else None, looked_into)


def _cut(loaded: Loaded, own: Named, other: Named) -> Loaded:
    """What was parsed, cut down where the other side is an issued revision and this one is not."""
    if not other.document or own.document or loaded.spec is None:
        return loaded
    try:
        return loaded_closure(loaded, loaded.spec, subject_of(loaded.spec, other.document))
    except RegisterError as reason:
        raise CannotRunError(f"{own.spelling}: {reason}") from reason


def snapshots(old: Named, new: Named, judged: Sequence[Judged], about: Address) -> tuple[Snapshot, Snapshot]:
    """The snapshots of both sides, cut to what can be told of them. `about` is the path of the record they are documents of."""

    def looked_into() -> frozenset[str]:
        return frozenset(name for one in judged if about for name in one.tables_read(about))

    if old.snapshot is None and new.snapshot is None:
        # one program judged both: no table can differ, and none has to be read
        return {}, {}
    before, now = (name.snapshot if name.snapshot is not None else reference_snapshot() for name in (old, new))
    return side_by_side(before, now, looked_into)


def _from_git(spelling: str, rest: str) -> Named:
    found = sources_at(rest)
    return Named(spelling, found.prefix, found.read, found.decisions, large=found.large)


def _from_register(spelling: str, rest: str) -> Named:
    sources, held, document, revision = revision_at(rest)
    return Named(spelling, "", lambda: sources, None, held, document, revision)


_ISSUED: Mapping[str, Callable[[Path], tuple[Sources, str, str]]] = {".pdf": issued_pdf, ".zip": issued_zip}
_WAYS: Mapping[str, Callable[[str, str], Named]] = {"git": _from_git, "register": _from_register}
