"""The concessions of a job as an assessment saw them: in force or not, used for what, and whether agreed once the figures were known.

Called by `assessment`. A concession is granted for what was found, so that one agreed after the readings is no fault of the readings; but
whoever reads the report has to know it.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from datetime import date

from specgen.assessing.cells import Dates, day_read
from specgen.assessing.conceded import Grants
from specgen.assessing.faults import Faults
from specgen.assessing.records import Record
from specgen.assessing.results import AirRead, At, ConcessionSeen
from specgen.assessing.sorting import Sorted
from specgen.facts.job.concessions import OF_THE_AIR, concessions_in, eased, in_force
from specgen.model.concession import Concession


def concessions_seen(
    results: Sequence[At],
    air: Sequence[AirRead],
    rows: Sorted,
    film: set[str],
    grants: Grants,
    dates: Dates,
    faults: Faults,
) -> Iterator[ConcessionSeen]:
    """Every concession of the job, in the order of the sources."""
    for one in concessions_in(grants.job, grants.spec):
        used = [at for at in results if one in at.conceded]
        found = [row for at in used for row in _rows(one, at, air, rows, film)]
        yield ConcessionSeen(
            one,
            in_force(one, grants.day),
            tuple((at.item.id, at.point.id) for at in used),
            _told_late(one, found, used, dates, faults),
        )


def _rows(one: Concession, at: At, air: Sequence[AirRead], rows: Sorted, film: set[str]) -> Iterator[Record]:
    """Those it can have been used for: air for a limit of the air, else what has a value at the point."""
    if any(limit.name in OF_THE_AIR for limit in eased(one)):
        found = [read.record for read in air if read.missed and one.coat in {None, read.coat}]
    else:
        found = rows.with_values(at.point.id, film=at.point.id in film)
    yield from (row for row in found if row.text("item") in {"", at.item.id})


def _told_late(
    one: Concession, rows: Sequence[Record], used: Sequence[At], dates: Dates, faults: Faults
) -> date | None:
    """The first day of the rows, where the concession was agreed later; told once, at that row."""
    days = [(on.date(), row) for row in rows if (on := day_read(row.text("on"), dates)) is not None]
    first = min(days, key=lambda day: day[0], default=None)
    if first is None or first[0] >= one.agreed_on:
        return None
    day, row = first
    what = f"recorded on {day}; the concession {one.id}, under which it is accepted, was agreed on {one.agreed_on}"
    faults.tell("RDG023", what, row.place("on"), point=used[0].point.id, item=used[0].item.id)
    return day
