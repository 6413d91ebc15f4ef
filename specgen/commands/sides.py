"""The two sides of a comparison, from how a user spells them: a folder, a file in it, `git:REVISION:PATH`, an issued revision.

Called by `compare`. A further way to name a side is one entry in `_WAYS`.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import dataclass
from datetime import date
from pathlib import Path

from specgen.checking import Checked, check_loaded
from specgen.commands.beside import beside
from specgen.commands.folder import prefix_of
from specgen.commands.git_side import sources_at
from specgen.commands.outcome import CannotRunError
from specgen.commands.register_side import issued_pdf, revision_at
from specgen.facts.closure import cut_to_closure
from specgen.findings import Report
from specgen.issuing.candidate import subject_of
from specgen.model.job import Job
from specgen.model.parse import Loaded, parse
from specgen.model.spec import LIST_KINDS, Spec
from specgen.model.walk import Path as Address
from specgen.register.failure import RegisterError
from specgen.source.characters import FILE_LIMIT, printable_name
from specgen.source.project import VERDICTS, SourceError, Sources, find_project, read_project

_LARGE = 500
"""Records from which on a second process is worth its start."""


@dataclass(frozen=True, slots=True)
class Named:
    """One side as read: how the user named it, what leads to its files, its sources, and the file of verdicts beside them.

    Of an issued revision `document` is its number and `revision` its own, both empty for any other side; `shelf` are the tables
    it was judged by, None where they are those of this program.
    """

    spelling: str
    prefix: str
    sources: Sources
    verdicts: bytes | None
    shelf: Mapping[str, str] | None = None
    document: str = ""
    revision: str = ""

    @property
    def title(self) -> str:
        """How a notice calls the side: `MS-001 B`, or as the user spelled it."""
        return f"{self.document} {self.revision}" if self.document else self.spelling


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
    if spelling.lower().endswith(".pdf") and not Path(spelling).is_dir():
        sources, document, revision = issued_pdf(Path(spelling))
        return Named(spelling, "", sources, None, document=document, revision=revision)
    try:
        folder = find_project(Path(spelling))
        return Named(spelling, prefix_of(folder), read_project(folder), _beside(folder))
    except SourceError as reason:
        raise CannotRunError(str(reason)) from reason


def checked_sides(old: Named, new: Named, on: date) -> tuple[Checked, Checked]:
    """Both sides parsed and judged by the rules, two large ones at the same time.

    Opposite an issued revision a folder is cut down to what that document reaches, or all else in it would seem added.
    """
    before, after = _cut(parse(old.sources), old, new), _cut(parse(new.sources), new, old)

    def judge_old() -> Report:
        return check_loaded(before, on).report

    def judge_new() -> Report:
        return check_loaded(after, on).report

    if len(before.places) < _LARGE:
        first, second = judge_old(), judge_new()
    else:
        first, second = beside(judge_old, judge_new)
    return Checked(before, first, on), Checked(after, second, on)


def _cut(loaded: Loaded, own: Named, other: Named) -> Loaded:
    """What was parsed, cut down where the other side is an issued revision and this one is not."""
    if not other.document or own.document or loaded.spec is None:
        return loaded
    try:
        spec = cut_to_closure(loaded.spec, subject_of(loaded.spec, other.document))
    except RegisterError as reason:
        raise CannotRunError(f"{own.spelling}: {reason}") from reason
    kept = {("project",), *((kind, key) for kind in LIST_KINDS for key in getattr(spec, kind))}
    return Loaded(spec, [], {path: places for path, places in loaded.places.items() if path in kept})


def _beside(folder: Path) -> bytes | None:
    file = folder / VERDICTS
    return verdicts_in(file) if file.is_file() else None


def verdicts_in(file: Path) -> bytes:
    """The bytes of a file of verdicts, one more than are read at most. Raises CannotRunError."""
    try:
        with file.open("rb") as stream:
            return stream.read(FILE_LIMIT + 1)
    except OSError as error:
        raise CannotRunError(f"{printable_name(str(file))} cannot be opened: {error.strerror or error}") from error


def _from_git(spelling: str, rest: str) -> Named:
    sources, prefix, verdicts = sources_at(rest)
    return Named(spelling, prefix, sources, verdicts)


def _from_register(spelling: str, rest: str) -> Named:
    sources, held, document, revision = revision_at(rest)
    return Named(spelling, "", sources, None, held, document, revision)


_WAYS: Mapping[str, Callable[[str, str], Named]] = {"git": _from_git, "register": _from_register}
