"""What stands behind the changes of a notice: figures that moved, findings, tables. Called by `change_notice`."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator
from dataclasses import dataclass

from specgen.comparison.changes import Comparison, FigureMoved, FindingMoved, Kind
from specgen.documents.parts.tables import Column, TableView, table_view
from specgen.documents.parts.wording import Words
from specgen.rules.titles import title_of
from specgen.units.locale import N_

_MOST = 60
_JOBS = 3

_KINDS = {Kind.ADDED: N_("new"), Kind.REMOVED: N_("removed"), Kind.CHANGED: N_("changed")}


@dataclass(frozen=True, slots=True, kw_only=True)
class Annex:
    """Each table may be without rows; `figures_left_out` counts what is not listed."""

    figures: TableView
    figures_left_out: str
    findings: TableView
    tables: TableView
    not_compared: tuple[str, ...]
    unused_decisions: TableView


def annex_of(found: Comparison, words: Words, *, for_maker: bool) -> Annex:
    """Addresses in the sources are for the maker; a customer is told what moved and by which rule."""
    numbers = {path: str(at) for path, at in found.numbers().items()}
    listed = tuple(entry for entry in found.figures if entry.is_listed)
    return Annex(
        figures=_figures(listed[:_MOST], numbers, words, for_maker=for_maker),
        figures_left_out=_left_out(found, listed, words),
        findings=_findings(found.findings[:_MOST], words, for_maker=for_maker),
        tables=_tables(found, words),
        not_compared=found.not_compared if for_maker else (),
        unused_decisions=_unused(found, words),
    )


def _figures(moved: tuple[FigureMoved, ...], numbers: dict[str, str], words: Words, *, for_maker: bool) -> TableView:
    columns = (
        Column(words("Figure"), "w-30"),
        Column(words("Before"), "w-12", numeric=True),
        Column(words("Now"), "w-12", numeric=True),
        Column(words("Jobs or products affected"), "w-25"),
        Column(words("Due to change No.")),
    )
    rows = [
        (
            f"{entry.name}\n{entry.id if for_maker else entry.told}",
            entry.old or "–",
            entry.new or "–",
            _where(entry, words),
            _causes(entry, numbers, words),
        )
        for entry in moved
    ]
    return table_view(words("Calculated figures that changed"), columns, rows)


def _where(entry: FigureMoved, words: Words) -> str:
    if not entry.jobs:
        return ", ".join(entry.where)
    shown = ", ".join(entry.where[:_JOBS])
    more = len(entry.where) - _JOBS
    return words("{jobs} and {number} more").format(jobs=shown, number=more) if more > 0 else shown


def _causes(entry: FigureMoved, numbers: dict[str, str], words: Words) -> str:
    named = list(dict.fromkeys(numbers[cause] for cause in entry.causes if cause in numbers))
    if entry.makers_cause:
        named.append(words("data held by the manufacturer"))
    return ", ".join(named) or "–"


def _findings(moved: tuple[FindingMoved, ...], words: Words, *, for_maker: bool) -> TableView:
    columns = (
        Column(words("Finding"), "w-10"),
        *([Column(words("Path"), "w-35")] if for_maker else []),
        Column(words("Before"), "w-10"),
        Column(words("Now"), "w-10"),
        Column(words("Text of the finding") if for_maker else words("What the rule asks")),
    )
    return table_view(
        words("Findings added, cleared or changed in severity"),
        columns,
        tuple(_finding_rows(moved, words, for_maker=for_maker)),
    )


def _finding_rows(moved: tuple[FindingMoved, ...], words: Words, *, for_maker: bool) -> Iterator[tuple[str, ...]]:
    """A row a finding; those that read alike, as they do to a customer, in one row with their number."""
    for (*row, what), number in Counter(_told(moved, for_maker=for_maker)).items():
        yield *row, what if number == 1 else words("{what} ({number} times)").format(what=what, number=number)


def _told(moved: tuple[FindingMoved, ...], *, for_maker: bool) -> Iterator[tuple[str, ...]]:
    for entry in moved:
        held = entry.new if entry.new is not None else entry.old
        if held is not None:
            was = entry.old.severity.value if entry.old is not None else "–"
            now = entry.new.severity.value if entry.new is not None else "–"
            # a customer is told which rule speaks, not its words on this value
            yield held.id, *([held.path] if for_maker else []), was, now, held.what or title_of(held.id)


def _tables(found: Comparison, words: Words) -> TableView:
    columns = (Column(words("Table"), "w-60"), Column(words("Change")))
    rows = [(entry.name, words(_KINDS[entry.kind])) for entry in found.tables]
    return table_view(words("Published tables and cited documents"), columns, rows)


def _unused(found: Comparison, words: Words) -> TableView:
    columns = (Column(words("Fingerprint"), "w-25"), Column(words("Decided by"), "w-30"), Column(words("Date")))
    rows = [(entry.fingerprint, entry.who, entry.on.isoformat()) for entry in found.unused_decisions]
    return table_view(words("Decisions on changes not found in this comparison"), columns, rows)


def _left_out(found: Comparison, listed: tuple[FigureMoved, ...], words: Words) -> str:
    said = []
    if (more := len(listed) - _MOST) > 0:
        said.append(
            words.plural("One further calculated figure changed.", "{number} further calculated figures changed.", more)
        )
    if others := len(found.figures) - len(listed):
        said.append(
            words.plural(
                "One calculated figure was added or removed by these changes.",
                "{number} calculated figures were added or removed by these changes.",
                others,
            )
        )
    return " ".join(said)
