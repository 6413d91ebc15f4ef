"""The conformity report as finished text: item by item on its first page, then points, films, air, paint and what is wrong with files.

The template `conformity_report/document.html.j2` prints it. Called by `specgen.printing`.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from specgen.assessing.results import Assessment, Verdict
from specgen.assessing.waited import waited_name
from specgen.assessing.wording import film_text
from specgen.documents.conformity_report.film import LotView, lot_views
from specgen.documents.conformity_report.marks import MarksView, marks_view
from specgen.documents.context import Context
from specgen.documents.parts.assessed import (
    MOST_ROWS,
    PLAIN,
    Head,
    air_table,
    batches_table,
    counted_concessions,
    counted_items,
    cut,
    files_table,
    head,
    points_by_item,
    sentence,
    to_do,
    used_for,
)
from specgen.documents.parts.assessed_work import before_repairs, said, times_between
from specgen.documents.parts.concessions import concession_table
from specgen.documents.parts.instruments import instruments_table
from specgen.documents.parts.tables import Column, TableView, table_view
from specgen.documents.parts.wording import Words
from specgen.findings import Report, Severity
from specgen.model.job import Item
from specgen.model.project import Means, Policies
from specgen.units.locale import N_

_ANSWER = {
    Verdict.CONFORMING: N_("Everything inspected conforms."),
    Verdict.CONCEDED: N_(
        "Everything inspected is accepted, part of it under a concession: outside a limit as specified, inside one that was agreed."
    ),
    Verdict.NOT_CONFORMING: N_(
        "Part of the work does not conform. It is not accepted until it is put right and inspected again."
    ),
    Verdict.NOT_DECIDED: N_(
        "Not everything is decided. What is not decided is not accepted until what is missing is there."
    ),
}
_WEIGHTS = {
    Severity.ERROR: N_("row not used"),
    Severity.WARNING: N_("to be clarified"),
    Severity.NOTE: N_("for information"),
}


@dataclass(frozen=True, slots=True, kw_only=True)
class ItemLine:
    """One item on the first page: what it comes to, why, and what to do; `grade` is a word for the style sheet."""

    item: str
    name: str
    verdict: str
    grade: str
    why: tuple[str, ...]
    do: tuple[str, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class ConformityReport:
    """The whole document. `answer` is the outcome in a sentence."""

    number: str
    title: str
    on: str
    head: Head
    answer: str
    counted: str
    conceded: str
    items: tuple[ItemLine, ...]
    points: tuple[TableView, ...]
    lots: tuple[LotView, ...]
    marks: MarksView
    times: TableView
    repaired: TableView
    air: TableView
    batches: TableView
    concessions: TableView
    findings: TableView
    instruments: TableView
    files: TableView
    judged: tuple[str, ...]
    program: str


def conformity_report(found: Assessment, context: Context) -> ConformityReport:
    """The view of an assessment."""
    spec, words, job = context.spec, context.words, found.job
    return ConformityReport(
        number=f"CR-{job.document.number}",
        title=job.document.title,
        on=found.day.isoformat(),
        head=head(found, context),
        answer=words(_ANSWER[found.verdict]),
        counted=counted_items(found, words),
        conceded=counted_concessions(found, words),
        items=tuple(_line(item, found, words) for item in job.items),
        points=points_by_item(found, words),
        lots=lot_views(found, spec, words),
        marks=marks_view(found, spec, words),
        times=times_between(found, words),
        repaired=before_repairs(found, words),
        air=air_table(found, spec, words),
        batches=batches_table(found, spec, words),
        concessions=concession_table(
            [(seen.concession, used_for(seen, found, words)) for seen in found.concessions], job, spec, words
        ),
        findings=_findings(found, words),
        instruments=instruments_table(found, words),
        files=files_table(found, words),
        judged=tuple(_judged(context, by_difference=any(at.less is not None for at in found.results))),
        program=context.program,
    )


def _line(item: Item, found: Assessment, words: Words) -> ItemLine:
    """Only what keeps the item from conforming, or lets it conform under a concession, is told here; the rest stands behind."""
    order = (Verdict.NOT_CONFORMING, Verdict.NOT_DECIDED, Verdict.CONCEDED)
    against = [at for verdict in order for at in found.of(item) if at.verdict is verdict]
    text = words("{check}: {reason}")
    why = [
        sentence(text.format(check=at.point.check, reason=said(reason, words)))
        for at in against
        for reason in at.reasons
    ]
    steps = [(at.point.check, " ".join(to_do(at, words))) for at in against]
    do = [text.format(check=check, reason=told) for check, told in steps if told]
    late = [wait for wait in found.waited if wait.item.id == item.id and wait.verdict is not Verdict.CONFORMING]
    why += [
        sentence(text.format(check=words(waited_name(wait)), reason=said(reason, words)))
        for wait in late
        for reason in wait.reasons
    ]
    do += [sentence(said(wait.put_right, words)) for wait in late if wait.put_right]
    verdict = found.verdict_on(item)
    return ItemLine(
        item=item.id,
        name=item.name,
        verdict=words(PLAIN[verdict]),
        grade=verdict.name.lower().replace("_", "-"),
        why=tuple(dict.fromkeys(why)),
        do=tuple(dict.fromkeys(do)),
    )


def _findings(found: Assessment, words: Words) -> TableView:
    columns = [
        Column(words("File, row, column"), "w-30"),
        Column(words("Weight"), "w-12"),
        Column(words("What"), "w-30"),
        Column(words("What to do")),
    ]
    all_of = Report.of(found.findings).findings
    rows = [
        (
            f"{one.place.file.rpartition('/')[2]}:{one.place.line}:{one.place.column}",
            words(_WEIGHTS[one.severity]),
            one.what,
            one.remedy,
        )
        for one in all_of[:MOST_ROWS]
    ]
    return table_view(cut(words("What is wrong with the files"), all_of, words), columns, rows)


def _judged(context: Context, *, by_difference: bool) -> Iterator[str]:
    """By which rounding and with which guard band figures are held against limits."""
    words, policies = context.words, context.spec.project.policies or Policies()
    if policies.means is Means.AS_READ:
        yield words(
            "Means are rounded half up to the digits of the readings before they are held against a limit, as the project asks."
        )
    else:
        yield words(
            "Figures are assessed with every digit and printed rounded half up. No reading was left out by the program."
        )
    if policies.guard_band is not None:
        text = words("A film nearer to a limit than {film} is not decided, as the project asks.")
        yield text.format(film=film_text(policies.guard_band.number, policies.guard_band.unit))
        if by_difference:
            yield words("A film by difference carries the error of two readings: the guard band counts twice.")
    else:
        yield words(
            "Readings are held against the limits as they are, without a guard band (simple acceptance, ILAC-G8): at the limit itself up "
            "to half of such results may be accepted wrongly."
        )
        if by_difference:
            yield words("A film by difference carries the error of two readings, which no guard band covers here.")
