"""What was repaired: readings taken before a repair are no longer those of the part, and are told as a deviation. Called by `assessment`.

A repair holds at the point, item, part and spot its row names, and at completion for whatever was assessed of that item before. What was
read there before has to be read again: a repair alone never makes anything pass. Where a day alone does not tell which came first, the
reading stands.
"""

from __future__ import annotations

from collections.abc import Collection, Iterable, Iterator, Mapping, Sequence
from datetime import datetime

from specgen.assessing.beneath import Beneath
from specgen.assessing.cells import Dates, day_read, has_time
from specgen.assessing.faults import Faults
from specgen.assessing.film import lots_at
from specgen.assessing.records import Record
from specgen.assessing.results import At, Deviation, Did, Done
from specgen.assessing.sorting import Sorted
from specgen.assessing.wording import reason_text
from specgen.model.acceptance import InspectionPoint, Stage
from specgen.model.job import Job
from specgen.model.spec import Spec
from specgen.units.locale import N_, phrase


class Repairs:
    """The repairs of a job, and which rows came before them."""

    def __init__(self, work: Iterable[Done], dates: Dates) -> None:
        self.all = tuple(one for one in work if one.did is Did.REPAIR and one.record.text("item"))
        self._dates = dates

    def standing(self, point: InspectionPoint, records: Sequence[Record], item: str = "") -> list[Record]:
        """The rows that no later repair took the ground from; `item` is whose they are where a row may hold for all items."""
        if not self.all:
            return list(records)
        return [record for record in records if self.after(point, record, item) is None]

    def after(self, point: InspectionPoint, record: Record, item: str = "") -> Done | None:
        """The first repair that came after a row and concerns it."""
        return next(
            (one for one in self.all if self._concerns(one, point, record, item) and self._older(record, one)), None
        )

    def _concerns(self, one: Done, point: InspectionPoint, record: Record, item: str) -> bool:
        at_end = point.at is Stage.COMPLETION
        if one.record.text("point") not in {"", point.id} and not at_end:
            return False
        if one.record.text("item") != (record.text("item") or item):
            return False
        for repaired, read in ((one.record.part, record.part), (one.record.text("spot"), record.text("spot"))):
            if repaired and read and repaired != read:
                return False
            # a reading without a part may be of any of them: it is told, not dropped
            if repaired and not read and not item and not at_end:
                return False
        return True

    def _older(self, record: Record, one: Done) -> bool:
        text = record.text("on")
        read = day_read(text, self._dates)
        return read is not None and surely_before((read, has_time(text)), (one.on, one.timed))


def surely_before(first: tuple[datetime, bool], then: tuple[datetime, bool]) -> bool:
    """Whether one moment is before another, where each may be a day alone; False where the days alone do not tell."""
    (one, one_timed), (other, other_timed) = first, then
    return one < other if one_timed and other_timed else one.date() < other.date()


def _spot_of(record: Record) -> str:
    return " ".join(text for text in (record.text("item"), record.part, record.text("spot")) if text)


def not_read_again(before: Sequence[Record], standing: Sequence[Record]) -> dict[str, list[str]]:
    """By item the spots that were read before a repair and not after it; `standing` are those of `before` that no repair came after."""
    if len(standing) == len(before):
        return {}
    again = {_spot_of(record) for record in standing}
    lacking: dict[str, list[str]] = {}
    for record in before:
        spot = _spot_of(record)
        mine = lacking.setdefault(record.text("item"), [])
        if spot not in again and spot not in mine:
            mine.append(spot)
    return {item: spots for item, spots in lacking.items() if spots}


def deviations(
    repairs: Repairs,
    results: Iterable[At],
    rows: Sorted,
    film: Collection[str],
    beneath: Mapping[str, Beneath | None],
    job: Job,
    spec: Spec,
) -> Iterator[Deviation]:
    """Each repair of each item at each point where something had been read before it, or that it names; `beneath` by point."""
    for at in results:
        for one in repairs.all:
            if one.record.text("item") != at.item.id:
                continue
            read, said = (
                [
                    record
                    for record in rows.with_values(at.point.id, film=figures)
                    if repairs.after(at.point, record, at.item.id) is one
                ]
                for figures in (True, False)
            )
            if read or said or one.record.text("point") == at.point.id:
                found = (*_of_film(at.point, read, beneath[at.point.id], job, spec), *_of_words(said))
                yield Deviation(point=at.point, item=at.item, found=found, repair=one, verdict=at.verdict)


def _of_words(records: Iterable[Record]) -> Iterator[str]:
    for record in records:
        said = phrase(N_("{value} on {on}"), value=record.text("value"), on=record.text("on"))
        remark = record.text("remark")
        yield phrase(N_("{what}: {remark}"), what=said, remark=remark) if remark else said


def _of_film(
    point: InspectionPoint, records: Sequence[Record], beneath: Beneath | None, job: Job, spec: Spec
) -> Iterator[str]:
    """What decided against the readings that stood before the repair."""
    if not records:
        return
    reasons = [
        reason_text(reason, lot.unit)
        for lot in lots_at(point, records, job, spec, Faults(), beneath)
        for reason in (lot.judged.reasons if lot.judged is not None else ())
        if reason.decides
    ]
    spots = ", ".join(dict.fromkeys(map(_spot_of, records)))
    yield from reasons or [phrase(N_("readings at {spots}, none of them outside the limits"), spots=spots)]
