"""What a job came to, from the records that its folder keeps: assessed, released or not, and what is missing. Called by `assess`.

Nothing missing is told as done: `open_of` names what keeps the job from being released, a sentence each.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from datetime import date

from specgen.assessing.assessment import assess
from specgen.assessing.cells import given, says_nothing
from specgen.assessing.faults import READING_FAULTS, Faults
from specgen.assessing.forms import state_of
from specgen.assessing.kept import Kept
from specgen.assessing.readings import Asked, records_of
from specgen.assessing.records import Record, columns
from specgen.assessing.releases import not_released, of_item
from specgen.assessing.results import Assessment, At, Did, Verdict
from specgen.assessing.waited import waited_name
from specgen.facts.job.points import BEFORE_PAINT
from specgen.facts.layer.called import coat_called
from specgen.findings import Finding, Severity
from specgen.model.job import Item, Job
from specgen.model.spec import Spec
from specgen.model.system import Layer
from specgen.register.names import READINGS
from specgen.register.people import People, Person
from specgen.trade.verdict import ACCEPTED
from specgen.units.locale import N_, listed, phrase


@dataclass(frozen=True, slots=True)
class Open:
    """One thing that keeps a job from being released: what it concerns, in an id or a name, and what is missing or wrong."""

    where: str
    what: str


@dataclass(frozen=True, slots=True)
class Built:
    """The records of a job assessed, what keeps them from releasing it, and who stands behind the ids they name."""

    found: Assessment
    open: tuple[Open, ...]
    people: People

    @property
    def persons(self) -> tuple[tuple[str, Person | None], ...]:
        """Everybody the records name, in that order, with the entry of the person if there is one."""
        named = dict.fromkeys(text for record in self.found.records for text in _named(record) if text)
        return tuple((text, self.people.of(text)) for text in named)


_named = columns("by", "dropped_by")
_when_and_who = columns("on", "by")
_read = columns("point", "coat", "value", "air")


def assessed(
    job: Job, spec: Spec, kept: Kept, people: People, day: date, fixed: Mapping[str, str] | None = None
) -> Assessment:
    """The files that are kept, judged."""
    faults = Faults()
    records = records_of(kept.files, Asked(kept.columns, fixed or {}, job.id, state_of(job)), faults)
    return assess(job, spec, records, faults, day=day, files=kept.files, dates=kept.dates, people=people)


def open_of(job: Job, spec: Spec, found: Assessment, kept: Kept, people: People) -> tuple[Open, ...]:
    """What keeps a job from being released by its records, each thing once; nothing where all of it is there and in order."""
    return tuple(dict.fromkeys(_open(job, spec, found, kept, people)))


def _open(job: Job, spec: Spec, found: Assessment, kept: Kept, people: People) -> Iterator[Open]:
    for why in kept.unread:
        yield Open(READINGS, why)
    for fault in people.findings:
        yield Open(str(fault.place), fault.what)
    for item in job.items:
        for at in found.of(item):
            yield from _of_point(at)
        for wait in found.waited:
            if wait.item.id == item.id and wait.verdict is not Verdict.CONFORMING:
                text = N_("{what}: {verdict}")
                said = phrase(text, what=waited_name(wait), verdict=phrase(wait.verdict.value))
                yield Open(
                    item.id, phrase(N_("{what}; {why}"), what=said, why=wait.reasons[0]) if wait.reasons else said
                )
        yield from _unrecorded(item, job, spec, found)
        if left := not_released(found.work, item):
            numbers = ", ".join(map(str, left))
            some = phrase(N_("parts that nobody has released: {numbers}"), numbers=numbers)
            yield Open(item.id, some if len(left) < item.count else phrase(N_("nobody has released it")))
    yield from _unsigned(found)
    yield from _faults(found.findings)


def _unsigned(found: Assessment) -> Iterator[Open]:
    """Inspection points where rows do not say when something was read, or by whom."""
    first: dict[tuple[str, str], tuple[Record, int]] = {}
    checks, signed = {point.id: point.check for point in found.job.inspection}, set[tuple[str, ...]]()
    for record in found.records:
        # thousands of rows say the same
        if (stated := _when_and_who(record)) in signed:
            continue
        lacking = " and ".join(name for name, text in zip(("on", "by"), stated, strict=True) if says_nothing(text))
        if not lacking:
            signed.add(stated)
            continue
        point, coat, value, air = _read(record)
        # film and air may name their coat alone
        if (value or air) and (where := checks.get(point) or coat):
            row, count = first.get((where, lacking), (record, 0))
            first[where, lacking] = row, count + 1
    for (where, lacking), (row, count) in first.items():
        text = N_("{check}: rows that do not state {what}: {count}")
        place = f"{row.source.file.rpartition('/')[2]}:{row.row}"
        yield Open(place, phrase(text, check=where, what=lacking, count=count))


def _of_point(at: At) -> Iterator[Open]:
    if at.verdict in ACCEPTED:
        return
    said = phrase(N_("{check}: {verdict}"), check=at.point.check, verdict=phrase(at.verdict.value))
    if not at.reasons:
        yield Open(at.item.id, said)
    for why in at.reasons:
        yield Open(at.item.id, phrase(N_("{what}; {why}"), what=said, why=why))


def _unrecorded(item: Item, job: Job, spec: Spec, found: Assessment) -> Iterator[Open]:
    """Work on an item that no row tells of: its preparation, and of each coat when, by whom and with which batch."""
    prepared = of_item(found.work, Did.PREPARATION, item)
    looked_at = [at for at in found.of(item) if at.point.at in BEFORE_PAINT]
    if spec.preparation_of(job, item) is not None and not prepared and not looked_at:
        yield Open(item.id, phrase(N_("no record says who prepared it, and when")))
    system = spec.system_of(job, item)
    if system is None:
        return
    for layer in system.layers:
        lacking = list(_lacking(item, layer, found))
        if lacking:
            text = N_("{coat}: {what} not recorded")
            yield Open(item.id, phrase(text, coat=coat_called(layer, system), what=listed("{first}, {more}", lacking)))


def _lacking(item: Item, layer: Layer, found: Assessment) -> Iterator[str]:
    used = [
        one
        for one in found.batches
        if one.item in {"", item.id} and (one.coat or layer.id) == layer.id and one.product in {"", layer.product}
    ]
    applied = [one.record for one in of_item(found.work, Did.APPLICATION, item) if one.coat == layer.id]
    rows = [*applied, *(one.record for one in used)]
    needed = (
        (N_("day of application"), any(record.text("on") for record in rows)),
        (N_("applicator"), any(given(record.text("by")) for record in rows)),
        (N_("batch"), any(one.batch for one in used)),
        (N_("expiry date"), any(one.expires is not None for one in used)),
        (N_("packs used"), any(one.cans for one in used)),
    )
    yield from (phrase(name) for name, there in needed if not there)


def _faults(findings: Sequence[Finding]) -> Iterator[Open]:
    """What is wrong with the rows: what was not used, and what is to be clarified; `faults` says which kinds are told alone."""
    for fault in findings:
        if fault.severity is Severity.ERROR or READING_FAULTS[fault.id].is_open:
            yield Open(f"{fault.place.file.rpartition('/')[2]}:{fault.place.line}", fault.what)
