"""What an assessment shows in two documents: its head, items and concessions counted, results by point, air, batches and files.

Called by the views of the conformity report and of the as-built record.
"""

from __future__ import annotations

from collections.abc import Iterator, Sized
from dataclasses import dataclass

from specgen.assessing.forms import state_of
from specgen.assessing.results import Assessment, At, ConcessionSeen, Verdict
from specgen.documents.context import Context
from specgen.documents.parts.as_read import Entered, as_read, entered, with_unit
from specgen.documents.parts.assessed_work import said
from specgen.documents.parts.coats import coats_by_id
from specgen.documents.parts.job_revision import revision_said
from specgen.documents.parts.parties import PartyView, contact_line, party
from specgen.documents.parts.tables import Column, TableView, table_view
from specgen.documents.parts.wording import Words
from specgen.model.job import Item
from specgen.model.spec import Spec
from specgen.units.locale import N_

PLAIN = {
    Verdict.CONFORMING: N_("conforms"),
    Verdict.CONCEDED: N_("conforms under a concession"),
    Verdict.NOT_CONFORMING: N_("DOES NOT CONFORM"),
    Verdict.NOT_DECIDED: N_("NOT DECIDED"),
}
MOST_ROWS = 200


@dataclass(frozen=True, slots=True, kw_only=True)
class Head:
    """Between whom, and on which state of which job."""

    maker: PartyView
    customer: PartyView
    owner: str
    vehicles: str
    job: str
    revision: str
    state: str
    call: str


def head(found: Assessment, context: Context) -> Head:
    job, project = found.job, context.spec.project
    return Head(
        maker=party(project.maker),
        customer=party(project.customer),
        owner=job.document.owner or "",
        vehicles=", ".join(job.vehicles),
        job=job.document.number,
        revision=revision_said(job.document.number, context),
        state=state_of(job),
        call=contact_line(job.call) if job.call is not None else "",
    )


def counted_items(found: Assessment, words: Words) -> str:
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


def counted_concessions(found: Assessment, words: Words) -> str:
    """How many concessions there are; empty where there is none."""
    if not found.concessions:
        return ""
    text = words("Concessions of this job: {all}; in force: {held}; used here: {used}.")
    held = sum(seen.is_in_force for seen in found.concessions)
    return text.format(all=len(found.concessions), held=held, used=sum(bool(seen.used) for seen in found.concessions))


def used_for(seen: ConcessionSeen, found: Assessment, words: Words) -> str:
    checks = {point.id: point.check for point in found.job.inspection}
    lines = [words("{item}: {check}").format(item=item, check=checks[point]) for item, point in seen.used]
    if not seen.is_in_force:
        ended = words("ended since: it holds for what was recorded by its last day")
        lines.append(ended if lines else words("not in force on the day of this report"))
    elif not lines:
        lines.append(words("nothing"))
    if seen.after is not None:
        lines.append(words("agreed after the readings of {day}").format(day=seen.after.isoformat()))
    return "\n".join(lines)


def points_by_item(found: Assessment, words: Words) -> tuple[TableView, ...]:
    """What each inspection of each item came to."""
    texts = entered(found, words)
    return tuple(_points_of(item, found, texts, words) for item in found.job.items)


def _points_of(item: Item, found: Assessment, texts: Entered, words: Words) -> TableView:
    columns = [
        Column(words("Inspection"), "w-15"),
        Column(words("Result"), "w-12"),
        Column(words("As read"), "w-15"),
        Column(words("Reasons"), "w-25"),
        Column(words("What to do")),
        Column(words("Assessed by"), "w-10"),
    ]
    rows = [_point(at, texts, words) for at in found.of(item)]
    return table_view(words("{item}, {name}").format(item=item.id, name=item.name), columns, rows, empty="–")


def _point(at: At, texts: Entered, words: Words) -> tuple[str, ...]:
    read = as_read(at, texts, words)
    why = "\n".join(sentence(said(text, words)) for text in at.reasons)
    return at.point.check, words(PLAIN[at.verdict]), read, why, "\n".join(to_do(at, words)), at.said_by


def to_do(at: At, words: Words) -> Iterator[str]:
    """What the job says to do first, then what is missing."""
    if at.put_right:
        yield sentence(said(at.put_right, words))
    yield from (sentence(words(step)) for step in at.next)


def sentence(text: str) -> str:
    return text[:1].upper() + text[1:] + ("" if text.endswith((".", "!", "?")) else ".")


def air_table(found: Assessment, spec: Spec, words: Words) -> TableView:
    """The air at each moment in order of time; rows that state none come last."""
    columns = [
        Column(words("When"), "w-12"),
        Column(words("Item and coat"), "w-12"),
        Column(words("Air"), "w-8"),
        Column(words("Humidity"), "w-10"),
        Column(words("Surface"), "w-8"),
        Column(words("Calculated")),
        Column(words("Outside its limits"), "w-20"),
        Column(words("By"), "w-12"),
    ]
    rows, coats = [], coats_by_id(found.job, spec, words)
    in_time = sorted(found.air, key=lambda read: (read.on is None, read.on.isoformat() if read.on is not None else ""))
    for read in in_time[:MOST_ROWS]:
        record = read.record
        figures = "\n".join(f"{words(figure.name)} {figure.printed(words.translate)}" for figure in read.figures)
        where = ", ".join(text for text in (read.item, coats.get(read.coat, read.coat)) if text)
        missed = "\n".join(words(text) for text in read.missed)
        if not read.complete:
            missed = "\n".join(text for text in (missed, words("not all measured")) if text)
        cells = (with_unit(record.text(name), record.unit_text(name), words) for name in ("air", "humidity", "surface"))
        by = record.text("by") or words("not stated")
        rows.append((record.text("on") or words("not stated"), where, *cells, figures, missed, by))
    return table_view(cut(words("Air at the part, as recorded"), found.air, words), columns, rows, empty="–")


def batches_table(found: Assessment, spec: Spec, words: Words) -> TableView:
    columns = [
        Column(words("Product"), "w-25"),
        Column(words("Coat"), "w-12"),
        Column(words("Item"), "w-10"),
        Column(words("Batch"), "w-12"),
        Column(words("Use by"), "w-10"),
        Column(words("Cans"), "w-6", numeric=True),
        Column(words("Applied"), "w-15"),
        Column(words("By")),
    ]
    coats, products = coats_by_id(found.job, spec, words), spec.products
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
    return table_view(
        cut(words("Paint used, by batch"), found.batches, words), columns, rows, empty=words("not stated")
    )


def cut(caption: str, rows: Sized, words: Words) -> str:
    """The caption of a table, which says where not all of its rows are printed."""
    if len(rows) <= MOST_ROWS:
        return caption
    text = words("{caption}: the first {most} of {count} rows are printed")
    return text.format(caption=caption, most=MOST_ROWS, count=len(rows))


def files_table(found: Assessment, words: Words) -> TableView:
    columns = [Column(words("File"), "w-40"), Column(words("SHA-256 of its bytes"))]
    return table_view(
        words("Files of readings"), columns, [(name.rpartition("/")[2], digest) for name, digest in found.files]
    )
