"""The two sides of a comparison, from how a user spells them: a folder, a file in it, or `git:REVISION:PATH`.

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
from specgen.comparison.compare import Side
from specgen.comparison.figures import JobFigures, figures_of_job
from specgen.comparison.shelf import shelf
from specgen.findings import Report
from specgen.model.parse import parse
from specgen.model.spec import LIST_KINDS, Spec
from specgen.source.project import SourceError, Sources, find_project, read_project

_LARGE = 500
"""Records from which on a second process is worth its start."""


@dataclass(frozen=True, slots=True)
class Named:
    """One side as read: how the user named it, what leads to its files, its sources, and its folder where it has one."""

    spelling: str
    prefix: str
    sources: Sources
    folder: Path | None


def read_side(spelling: str) -> Named:
    """The sources a spelling leads to. Raises CannotRunError where there are none."""
    way, colon, rest = spelling.partition(":")
    if colon and way in _WAYS:
        return _WAYS[way](spelling, rest)
    if not spelling:
        raise CannotRunError("a side is empty; name a folder, or git:REVISION:PATH")
    try:
        folder = find_project(Path(spelling))
        return Named(spelling, prefix_of(folder), read_project(folder), folder)
    except SourceError as reason:
        raise CannotRunError(str(reason)) from reason


def checked_sides(old: Named, new: Named, on: date) -> tuple[Checked, Checked]:
    """Both sides parsed and judged by the rules, two large ones at the same time."""
    before, after = parse(old.sources), parse(new.sources)

    def judge_old() -> Report:
        return check_loaded(before, on).report

    def judge_new() -> Report:
        return check_loaded(after, on).report

    if len(before.places) < _LARGE:
        first, second = judge_old(), judge_new()
    else:
        first, second = beside(judge_old, judge_new)
    return Checked(before, first, on), Checked(after, second, on)


def side_of(checked: Checked, spec: Spec) -> Side:
    """The side as the comparison takes it. Entries that stand in the sources but are not whole are named as unread."""
    whole = {(kind, key) for kind in LIST_KINDS for key in getattr(spec, kind)}
    unread = {path for path in checked.loaded.places if len(path) == 2 and path not in whole}

    def figures(job: str) -> JobFigures:
        return figures_of_job(spec.jobs[job], spec, checked.on)

    return Side(spec, checked.loaded.place, checked.report, figures, shelf(), frozenset(unread))


def _from_git(spelling: str, rest: str) -> Named:
    sources, prefix = sources_at(rest)
    return Named(spelling, prefix, sources, None)


_WAYS: Mapping[str, Callable[[str, str], Named]] = {"git": _from_git}
