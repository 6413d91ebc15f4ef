"""What is measured before coating and taken off later readings: zinc part by part, an existing coating spot by spot; its means. Called by
`assessment`."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from fractions import Fraction

from specgen.assessing.cells import CellError, figure_of, is_word, shows_nothing
from specgen.assessing.faults import Faults
from specgen.assessing.records import Record
from specgen.assessing.sorting import Sorted
from specgen.facts.job.existing_beneath import existing_point
from specgen.facts.job.zinc_beneath import zinc_point
from specgen.model.acceptance import InspectionPoint
from specgen.model.job import Job
from specgen.units.quantity import Quantity

Means = Mapping[tuple[str, ...], Quantity]
"""The mean of each part, by item and number of the part; of an existing coating of each spot, by its name besides."""


@dataclass(frozen=True, slots=True)
class Beneath:
    """The means to be taken off, and whether each holds for its spot alone."""

    means: Means
    by_spot: bool = False

    def key(self, record: Record, job: Job) -> tuple[str, ...]:
        return key_of(record, job, by_spot=self.by_spot)


def part_of(record: Record, job: Job) -> tuple[str, str]:
    """Item and part of a row; of an item of one part the number need not be written."""
    item = record.text("item")
    alone = any(one.id == item and one.count == 1 for one in job.items)
    return item, record.part or ("1" if alone else "")


def figures_among(records: Iterable[Record]) -> list[Record]:
    """The rows that hold what was measured, and no word on it."""
    return [record for record in records if record.text("value") and not is_word(record.text("value"))]


def key_of(record: Record, job: Job, *, by_spot: bool) -> tuple[str, ...]:
    return (*part_of(record, job), record.text("spot")) if by_spot else part_of(record, job)


def means_read(
    point: InspectionPoint, records: Iterable[Record], job: Job, faults: Faults, *, by_spot: bool = False
) -> Means:
    """The mean of the rows of each part, or of each spot; a row that cannot be used is told."""
    read: dict[tuple[str, ...], list[Fraction]] = {}
    for record in records:
        text, item = record.text("value"), record.text("item")
        if not text or is_word(text):
            continue
        if shows_nothing(text):
            what = f"{text} is what a gauge shows that reads nothing"
            faults.tell("RDG005", what, record.place("value"), point=point.id, item=item)
            continue
        try:
            film = figure_of("thickness", text, record.unit_text("value"))
        except CellError as reason:
            faults.tell("RDG003", reason.what, record.place("value"), point=point.id, item=item)
            continue
        read.setdefault(key_of(record, job, by_spot=by_spot), []).append(film.to("um"))
    return {key: Quantity.of("thickness", sum(films, Fraction(0)) / len(films), "um") for key, films in read.items()}


@dataclass(frozen=True, slots=True)
class Measured:
    """What was measured before coating, by point, and what of it is taken off at each point of the job."""

    zinc: Mapping[str, Means]
    existing: Mapping[str, Means]
    under: Mapping[str, Beneath | None]


def what_is_beneath(job: Job, rows: Sorted, faults: Faults) -> Measured:
    """Where something is to be taken off and no figure of it was recorded, the readings decide nothing: each part or spot is told."""
    zinc: dict[str, Means] = {}
    existing: dict[str, Means] = {}
    under: dict[str, Beneath | None] = {}
    for point in job.inspection:
        under[point.id] = None
        for found, measured, by_spot in (
            (zinc_point(point, job), zinc, False),
            (existing_point(point, job), existing, True),
        ):
            if found is None:
                continue
            if found.id not in measured:
                read = rows.with_values(found.id, film=False)
                measured[found.id] = means_read(found, read, job, faults, by_spot=by_spot)
            under[point.id] = Beneath(measured[found.id], by_spot)
    return Measured(zinc, existing, under)
