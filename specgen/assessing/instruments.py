"""The instruments that readings were taken with, as their rows state them. Called by the reports on an assessment."""

from __future__ import annotations

from dataclasses import dataclass

from specgen.assessing.records import columns
from specgen.assessing.results import Assessment

_stated = columns("gauge", "serial", "checked_on", "point")


@dataclass(frozen=True, slots=True)
class Instrument:
    """One instrument and its last check as written, an empty text where nothing is; `points` are ids in the order of the job."""

    gauge: str
    serial: str
    checked_on: str
    points: tuple[str, ...]


def instruments_of(found: Assessment) -> tuple[Instrument, ...]:
    """In the order of the rows; rows that state no instrument are told by a finding."""
    used: dict[tuple[str, str, str], set[str]] = {}
    for gauge, serial, checked_on, point in dict.fromkeys(map(_stated, found.records)):
        if gauge or serial or checked_on:
            used.setdefault((gauge, serial, checked_on), set()).add(point)
    return tuple(
        Instrument(*stated, tuple(point.id for point in found.job.inspection if point.id in points))
        for stated, points in used.items()
    )
