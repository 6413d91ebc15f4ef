"""The conformity report as finished text: item by item on its first page, then points, films, air, paint and what is wrong with files.

The template `conformity_report/document.html.j2` prints it. Called by `specgen.printing`.
"""

from __future__ import annotations

from collections.abc import Iterator, Sized
from dataclasses import dataclass

from specgen.assessing.forms import state_of
from specgen.assessing.instruments import instruments_of
from specgen.assessing.results import Assessment, At, ConcessionSeen, Verdict
from specgen.assessing.waited import waited_name
from specgen.assessing.wording import film_text
from specgen.documents.conformity_report.done import before_repairs, said, times_between
from specgen.documents.conformity_report.film import LotView, lot_views
from specgen.documents.conformity_report.marks import MarksView, marks_view
from specgen.documents.context import Context
from specgen.documents.parts.coats import coat_name, numbered
from specgen.documents.parts.concessions import concession_table
from specgen.documents.parts.job_revision import revision_said
from specgen.documents.parts.parties import PartyView, contact_line, party
from specgen.documents.parts.tables import Column, TableView, table_view
from specgen.documents.parts.wording import Words
from specgen.findings import Report, Severity
from specgen.model.job import Item
from specgen.model.project import Means, Policies
from specgen.model.spec import Spec
from specgen.units.display import unit_sign
from specgen.units.kinds import UNITS
from specgen.units.locale import N_

_PLAIN = {
    Verdict.CONFORMING: N_("conforms"),
    Verdict.CONCEDED: N_("conforms under a concession"),
    Verdict.NOT_CONFORMING: N_("DOES NOT CONFORM"),
    Verdict.NOT_DECIDED: N_("NOT DECIDED"),
}
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
MOST_ROWS = 200


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
    maker: PartyView
    customer: PartyView
    on: str
    owner: str
    vehicles: str
    job: str
    revision: str
    state: str
    call: str
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
        maker=party(spec.project.maker),
        customer=party(spec.project.customer),
        on=found.day.isoformat(),
        owner=job.document.owner or "",
        vehicles=", ".join(job.vehicles),
        job=job.document.number,
        revision=revision_said(job.document.number, context),
        state=state_of(job),
        call=contact_line(job.call) if job.call is not None else "",
        answer=words(_ANSWER[found.verdict]),
        counted=_counted(found, words),
        conceded=_conceded(found, words),
        items=tuple(_line(item, found, words) for item in job.items),
        points=tuple(_points(item, found, words) for item in job.items),
        lots=lot_views(found, spec, words),
        marks=marks_view(found, spec, words),
        times=times_between(found, words),
        repaired=before_repairs(found, words),
        air=_air(found, spec, words),
        batches=_batches(found, spec, words),
        concessions=concession_table(
            [(seen.concession, _used(seen, found, words)) for seen in found.concessions], job, words
        ),
        findings=_findings(found, words),
        instruments=_instruments(found, words),
        files=_files(found, words),
        judged=tuple(_judged(context, by_difference=any(at.less is not None for at in found.results))),
        program=context.program,
    )


def _counted(found: Assessment, words: Words) -> str:
    items = found.job.items
    many = {verdict: sum(found.verdict_on(item) is verdict for item in items) for verdict in Verdict}
    text = words("Items: {all}. Conforming: {yes}; not conforming: {no}; not decided: {open}.")
    if many[Verdict.CONCEDED]:
        text = words(
            "Items: {all}. Conforming: {yes}; conforming under a concession: {under}; not conforming: {no}; not decided: {open}."
        )
    return text.format(
        all=len(items),
        yes=many[Verdict.CONFORMING],
        under=many[Verdict.CONCEDED],
        no=many[Verdict.NOT_CONFORMING],
        open=many[Verdict.NOT_DECIDED],
    )


def _conceded(found: Assessment, words: Words) -> str:
    """How many concessions there are; empty where there is none."""
    if not found.concessions:
        return ""
    text = words("Concessions of this job: {all}; in force: {held}; used here: {used}.")
    held = sum(seen.is_in_force for seen in found.concessions)
    return text.format(all=len(found.concessions), held=held, used=sum(bool(seen.used) for seen in found.concessions))


def _used(seen: ConcessionSeen, found: Assessment, words: Words) -> str:
    checks = {point.id: point.check for point in found.job.inspection}
    lines = [words("{item}: {check}").format(item=item, check=checks[point]) for item, point in seen.used]
    if not seen.is_in_force:
        lines.append(words("not in force on the day of this report"))
    elif not lines:
        lines.append(words("nothing"))
    if seen.after is not None:
        lines.append(words("agreed after the readings of {day}").format(day=seen.after.isoformat()))
    return "\n".join(lines)


def _line(item: Item, found: Assessment, words: Words) -> ItemLine:
    """Only what keeps the item from conforming, or lets it conform under a concession, is told here; the rest stands behind."""
    order = (Verdict.NOT_CONFORMING, Verdict.NOT_DECIDED, Verdict.CONCEDED)
    against = [at for verdict in order for at in found.of(item) if at.verdict is verdict]
    text = words("{check}: {reason}")
    why = [
        _sentence(text.format(check=at.point.check, reason=said(reason, words)))
        for at in against
        for reason in at.reasons
    ]
    do = [step for at in against for step in _to_do(at, words)]
    late = [wait for wait in found.waited if wait.item.id == item.id and wait.verdict is not Verdict.CONFORMING]
    why += [
        _sentence(text.format(check=words(waited_name(wait)), reason=said(reason, words)))
        for wait in late
        for reason in wait.reasons
    ]
    do += [_sentence(said(wait.put_right, words)) for wait in late if wait.put_right]
    verdict = found.verdict_on(item)
    return ItemLine(
        item=item.id,
        name=item.name,
        verdict=words(_PLAIN[verdict]),
        grade=verdict.name.lower().replace("_", "-"),
        why=tuple(dict.fromkeys(why)),
        do=tuple(dict.fromkeys(do)),
    )


def _points(item: Item, found: Assessment, words: Words) -> TableView:
    columns = [
        Column(words("Inspection"), "w-25"),
        Column(words("Result"), "w-15"),
        Column(words("Reasons"), "w-25"),
        Column(words("What to do")),
        Column(words("Assessed by"), "w-12"),
    ]
    rows = [_point(at, words) for at in found.of(item)]
    return table_view(words("{item}, {name}").format(item=item.id, name=item.name), columns, rows)


def _point(at: At, words: Words) -> tuple[str, ...]:
    why = "\n".join(_sentence(said(text, words)) for text in at.reasons)
    return at.point.check, words(_PLAIN[at.verdict]), why, "\n".join(_to_do(at, words)), at.said_by


def _to_do(at: At, words: Words) -> Iterator[str]:
    """What the job says to do first, then what is missing."""
    if at.put_right:
        yield _sentence(said(at.put_right, words))
    yield from (_sentence(words(step)) for step in at.next)


def _sentence(text: str) -> str:
    return text[:1].upper() + text[1:] + ("" if text.endswith((".", "!", "?")) else ".")


def _coats(found: Assessment, spec: Spec, words: Words) -> dict[str, str]:
    """`1 primer` by the id of the coat."""
    return {
        layer.id: coat_name(number, layer, words)
        for system in spec.systems_of(found.job)
        for number, layer in numbered(system)
    }


def _air(found: Assessment, spec: Spec, words: Words) -> TableView:
    columns = [
        Column(words("When"), "w-12"),
        Column(words("Item and coat"), "w-12"),
        Column(words("Air"), "w-8"),
        Column(words("Humidity"), "w-10"),
        Column(words("Surface"), "w-8"),
        Column(words("Calculated"), "w-20"),
        Column(words("Outside its limits")),
        Column(words("By"), "w-12"),
    ]
    rows, coats = [], _coats(found, spec, words)
    for read in found.air[:MOST_ROWS]:
        record = read.record
        figures = "\n".join(f"{words(figure.name)} {figure.printed(words.translate)}" for figure in read.figures)
        where = ", ".join(text for text in (read.item, coats.get(read.coat, read.coat)) if text)
        missed = "\n".join(words(text) for text in read.missed)
        if not read.complete:
            missed = "\n".join(text for text in (missed, words("not all measured")) if text)
        cells = (_with_unit(record.text(name), record.unit_text(name)) for name in ("air", "humidity", "surface"))
        rows.append((record.text("on"), where, *cells, figures, missed, record.text("by")))
    return table_view(_cut(words("Air at the part, as recorded"), found.air, words), columns, rows)


def _with_unit(text: str, unit: str) -> str:
    if not text or not text[-1:].isdigit() or unit not in UNITS:
        return text
    return f"{text}\N{NO-BREAK SPACE}{unit_sign(unit)}"


def _batches(found: Assessment, spec: Spec, words: Words) -> TableView:
    columns = [
        Column(words("Product"), "w-20"),
        Column(words("Coat"), "w-15"),
        Column(words("Item"), "w-10"),
        Column(words("Batch"), "w-15"),
        Column(words("Use by"), "w-12"),
        Column(words("Cans"), "w-8", numeric=True),
        Column(words("Applied"), "w-12"),
        Column(words("By")),
    ]
    coats, products = _coats(found, spec, words), spec.products
    rows = [
        (
            products[used.product].name if used.product in products else used.product,
            coats.get(used.coat, used.coat),
            used.item or words("all items"),
            used.batch or words("not stated"),
            used.expires.date().isoformat() if used.expires is not None else words("not stated"),
            used.cans,
            used.record.text("on"),
            used.record.text("by"),
        )
        for used in found.batches[:MOST_ROWS]
    ]
    return table_view(_cut(words("Paint used, by batch"), found.batches, words), columns, rows)


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
    return table_view(_cut(words("What is wrong with the files"), all_of, words), columns, rows)


def _instruments(found: Assessment, words: Words) -> TableView:
    columns = [
        Column(words("Instrument"), "w-20"),
        Column(words("Serial number"), "w-12"),
        Column(words("Last checked"), "w-12"),
        Column(words("Calibrated until"), "w-12"),
        Column(words("Zero before"), "w-10", numeric=True),
        Column(words("Zero after"), "w-10", numeric=True),
        Column(words("Inspection")),
    ]
    checks = {point.id: point.check for point in found.job.inspection}
    rows = [
        (
            *(
                one.stated[name] or words("not stated")
                for name in ("gauge", "serial", "checked_on", "calibrated_until")
            ),
            *(_with_unit(one.stated[name], "um") or words("not stated") for name in ("zero_before", "zero_after")),
            "\n".join(checks[point] for point in one.points),
        )
        for one in instruments_of(found)
    ]
    return table_view(_cut(words("Instruments, as the readings name them"), rows, words), columns, rows[:MOST_ROWS])


def _cut(caption: str, rows: Sized, words: Words) -> str:
    """The caption of a table, which says where not all of its rows are printed."""
    if len(rows) <= MOST_ROWS:
        return caption
    text = words("{caption}: the first {most} of {count} rows are printed")
    return text.format(caption=caption, most=MOST_ROWS, count=len(rows))


def _files(found: Assessment, words: Words) -> TableView:
    columns = [Column(words("File"), "w-40"), Column(words("SHA-256 of its bytes"))]
    return table_view(
        words("Files of readings"), columns, [(name.rpartition("/")[2], digest) for name, digest in found.files]
    )


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
