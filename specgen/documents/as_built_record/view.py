"""The as-built record as finished text: released or not on its first page, then work, air, paint, results, repairs and persons.

The template `as_built_record/document.html.j2` prints it. Called by `specgen.printing`.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from specgen.assessing.as_built import Built
from specgen.assessing.records import Record, columns
from specgen.assessing.releases import of_item
from specgen.assessing.results import Assessment, Did, Done
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
    used_for,
)
from specgen.documents.parts.assessed_work import before_repairs, said, times_between
from specgen.documents.parts.coats import coats_by_id
from specgen.documents.parts.concessions import concession_table
from specgen.documents.parts.inspection import passes
from specgen.documents.parts.instruments import instruments_table
from specgen.documents.parts.revision_table import revision_table
from specgen.documents.parts.tables import Column, TableView, table_view
from specgen.documents.parts.wording import Words
from specgen.model.file_names import record_number
from specgen.model.spec import Spec

_same = columns("item", "part", "coat", "by")
_LASTS = frozenset({Did.PREPARATION, Did.APPLICATION, Did.SANDING, Did.REPAIR})


@dataclass(frozen=True, slots=True, kw_only=True)
class AsBuiltRecord:
    """The whole document. `answer` is the outcome in a sentence."""

    number: str
    title: str
    on: str
    head: Head
    released: bool
    answer: str
    counted: str
    conceded: str
    repaired_count: str
    began: str
    items: TableView
    missing: TableView
    work: TableView
    air: TableView
    batches: TableView
    points: tuple[TableView, ...]
    asked: TableView
    repaired: TableView
    concessions: TableView
    times: TableView
    instruments: TableView
    persons: TableView | None
    ids: str
    files: TableView
    revisions: TableView
    program: str


def as_built_record(built: Built, context: Context) -> AsBuiltRecord:
    """The view of the records of a job."""
    found, spec, words, job = built.found, context.spec, context.words, built.found.job
    return AsBuiltRecord(
        number=record_number(job),
        title=job.document.title,
        on=found.day.isoformat(),
        head=head(found, context),
        released=not built.open,
        answer=words("NOT RELEASED. What is open stands below.") if built.open else words("RELEASED"),
        counted=counted_items(found, words),
        conceded=counted_concessions(found, words),
        repaired_count=words("Deviations found and repaired: {count}.").format(count=len(found.deviations)),
        began=_began(found, context),
        items=_items(found, words),
        missing=_missing(built, words),
        work=_work(found, spec, words),
        air=air_table(found, spec, words),
        batches=batches_table(found, spec, words),
        points=points_by_item(found, words),
        asked=_asked(found, spec, words),
        repaired=before_repairs(found, words),
        concessions=concession_table(
            [(seen.concession, used_for(seen, found, words)) for seen in found.concessions], job, spec, words
        ),
        times=times_between(found, words),
        instruments=instruments_table(found, words),
        # what is issued is kept as it is, so that it holds the ids alone, and names can be erased
        persons=_persons(built, words) if context.issue is None else None,
        ids=", ".join(text for text, _ in built.persons),
        files=files_table(found, words),
        revisions=revision_table(record_number(job), None, context),
        program=context.program,
    )


def _began(found: Assessment, context: Context) -> str:
    """Told where work began before the revision that the records are held against was issued; else empty."""
    known = context.revisions.get(found.job.document.number)
    held = known.current if known is not None else None
    moments = [one.on for one in found.work] + [one.on for one in found.air] + [one.on for one in found.batches]
    days = [moment.date().isoformat() for moment in moments if moment is not None]
    if held is None or not days or min(days) >= held.day:
        return ""
    text = context.words("Work began on {day}, before revision {revision} of the job was issued on {issued}.")
    return text.format(day=min(days), revision=held.revision, issued=held.day)


def _items(found: Assessment, words: Words) -> TableView:
    columns = [
        Column(words("Item"), "w-30"),
        Column(words("Result"), "w-20"),
        Column(words("Released by"), "w-25"),
        Column(words("Released on")),
    ]
    rows = []
    for item in found.job.items:
        releases = [one.record for one in of_item(found.work, Did.RELEASE, item)]
        by = ", ".join(dict.fromkeys(one.text("by") for one in releases))
        on = "\n".join(_released(one, words) for one in releases)
        name = words("{item}, {name}").format(item=item.id, name=item.name)
        rows.append((name, words(PLAIN[found.verdict_on(item)]), by or words("not released"), on))
    return table_view(words("Result and release of each item"), columns, rows, empty="–")


def _released(record: Record, words: Words) -> str:
    on, part = record.text("on"), record.text("part")
    return words("part {part}: {on}").format(part=part, on=on) if part else on


def _missing(built: Built, words: Words) -> TableView:
    columns = [Column(words("Where"), "w-25"), Column(words("What is open"))]
    rows = [(one.where, said(one.what, words)) for one in built.open[:MOST_ROWS]]
    return table_view(cut(words("What is open"), built.open, words), columns, rows)


def _work(found: Assessment, spec: Spec, words: Words) -> TableView:
    columns = [
        Column(words("When"), "w-20"),
        Column(words("Work"), "w-12"),
        Column(words("Item"), "w-12"),
        Column(words("Coat"), "w-12"),
        Column(words("By"), "w-12"),
        Column(words("Remark")),
    ]
    coats = coats_by_id(found.job, spec, words)
    spans = list(_spans(sorted(found.work, key=lambda done: done.on)))
    rows = [
        (
            _when(first, last, words),
            words(first.did.value),
            _where(first.record, words),
            coats.get(first.record.text("coat"), first.record.text("coat")),
            first.record.text("by") or words("not stated"),
            first.record.text("remark") or last.record.text("remark"),
        )
        for first, last in spans[:MOST_ROWS]
    ]
    return table_view(cut(words("Work, as recorded"), spans, words), columns, rows, empty="–")


def _spans(work: Sequence[Done]) -> Iterator[tuple[Done, Done]]:
    """Work with its beginning and its end: two rows of one day, with times, that say the same of it; any other row by itself."""
    alike: dict[tuple[object, ...], list[Done]] = {}
    for done in work:
        alike.setdefault((done.did, done.on.date(), *_same(done.record)), []).append(done)
    for rows in alike.values():
        remarks = {remark for done in rows if (remark := done.record.text("remark"))}
        if len(rows) == 2 and all(done.timed for done in rows) and rows[0].did in _LASTS and len(remarks) < 2:
            yield rows[0], rows[1]
        else:
            yield from ((done, done) for done in rows)


def _when(first: Done, last: Done, words: Words) -> str:
    if first is last:
        return first.record.text("on")
    return words("{begin} to {end}").format(begin=first.record.text("on"), end=f"{last.on:%H:%M}")


def _where(record: Record, words: Words) -> str:
    item, part = record.text("item") or words("all items"), record.text("part")
    return words("{item}, part {part}").format(item=item, part=part) if part else item


def _asked(found: Assessment, spec: Spec, words: Words) -> TableView:
    """What each inspection was held against."""
    columns = [Column(words("Inspection"), "w-25"), Column(words("Acceptance"))]
    rows = [(point.check, passes(point, found.job, spec, words, wide=True)) for point in found.job.inspection]
    return table_view(words("Held against"), columns, rows)


def _persons(built: Built, words: Words) -> TableView:
    columns = [
        Column(words("In the records"), "w-12"),
        Column(words("Name"), "w-15"),
        Column(words("Employer and function"), "w-38"),
        Column(words("Qualifications")),
    ]
    rows = []
    for text, one in built.persons:
        until = words("{what}, until {day}")
        held = [
            until.format(what=has.what, day=has.until.isoformat()) if has.until is not None else has.what
            for has in (one.qualifications if one is not None else ())
        ]
        post = [part for part in (one.employer, one.function) if part] if one is not None else []
        rows.append((text, (one.name or "") if one is not None else "", ", ".join(post), "\n".join(held)))
    return table_view(words("Persons named by the records"), columns, rows, words("not stated"))
