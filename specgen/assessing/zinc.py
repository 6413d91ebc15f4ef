"""Zinc thickness measured part by part before coating: its means, which are taken off later readings. Called by `assessment`."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from fractions import Fraction

from specgen.assessing.cells import CellError, figure_of, is_word, shows_nothing
from specgen.assessing.faults import Faults
from specgen.assessing.records import Record
from specgen.model.acceptance import InspectionPoint
from specgen.model.job import Job
from specgen.units.quantity import Quantity

Zinc = Mapping[tuple[str, str], Quantity]
"""The mean of each part, by item and number of the part."""


def part_of(record: Record, job: Job) -> tuple[str, str]:
    """Item and part of a row; of an item of one part the number need not be written."""
    item = record.text("item")
    alone = any(one.id == item and one.count == 1 for one in job.items)
    return item, record.part or ("1" if alone else "")


def zinc_read(point: InspectionPoint, records: Iterable[Record], job: Job, faults: Faults) -> Zinc:
    """The mean of the rows of each part; a row that cannot be used is told."""
    read: dict[tuple[str, str], list[Fraction]] = {}
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
        read.setdefault(part_of(record, job), []).append(film.to("um"))
    return {key: Quantity.of("thickness", sum(films, Fraction(0)) / len(films), "um") for key, films in read.items()}
