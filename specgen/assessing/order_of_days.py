"""Days that cannot be: film read before its coat, or on a day to come. Called by `assessment`."""

from __future__ import annotations

from collections.abc import Sequence
from datetime import date, datetime

from specgen.assessing.air import moment
from specgen.assessing.cells import Dates, day_read, has_time
from specgen.assessing.faults import Faults
from specgen.assessing.records import Record, columns
from specgen.assessing.results import AirRead, BatchUsed, Did, Done
from specgen.assessing.sorting import Sorted
from specgen.model.job import Job

_when = columns("on", "item")
_texts = columns("on", "item", "point", "work")

Applied = dict[tuple[str, str], tuple[datetime, bool]]
"""When each coat was first worked on, by item (empty for all) and coat; whether a time of day is known."""


def applied(air: Sequence[AirRead], batches: Sequence[BatchUsed], work: Sequence[Done]) -> Applied:
    """By the air and the batches recorded for it, and its application; a coat that a repair renewed was there before."""
    found: Applied = {}
    repaired: dict[str, datetime] = {}
    for one in work:
        if one.did is Did.REPAIR:
            item = one.record.text("item")
            repaired[item] = min(one.on, repaired.get(item, one.on))
    used: tuple[AirRead | BatchUsed | Done, ...] = (
        *air,
        *batches,
        *(one for one in work if one.did is Did.APPLICATION),
    )
    for read in used:
        if read.on is None or not read.coat:
            continue
        key = (read.record.text("item"), read.coat)
        if key[0] in repaired and read.on >= repaired[key[0]]:
            continue
        timed = has_time(read.record.text("on"))
        if key not in found or read.on < found[key][0]:
            found[key] = (read.on, timed)
    return found


def tell_wrong_days(
    job: Job,
    rows: Sorted,
    film: set[str],
    begun: Applied,
    dates: Dates,
    faults: Faults,
) -> None:
    """No film is read before its coat."""
    for point in job.inspection:
        fine = set()
        for record in rows.with_values(point.id, film=point.id in film):
            said, item = _when(record)
            if not said or (said, item) in fine:
                continue
            before = faults.count
            on = moment(record, "on", dates, point.id, faults)
            if on is None:
                continue
            started = begun.get((item, point.after or "")) or begun.get(("", point.after or ""))
            if started is not None:
                coat, timed = started
                exact = timed and has_time(said)
                if (on < coat) if exact else (on.date() < coat.date()):
                    what = f"read on {said}, before the coat {point.after} was applied ({coat:%Y-%m-%d})"
                    faults.tell("RDG009", what, record.place("on"), point=point.id, item=item)
            if faults.count == before:
                fine.add((said, item))


def tell_days_to_come(records: Sequence[Record], day: date, dates: Dates, faults: Faults) -> None:
    """No row is of a day after the one it is assessed as at: nothing was read, done or released on it."""
    fine = set()
    for record in records:
        said, item, point, work = texts = _texts(record)
        # thousands of rows say the same
        if texts in fine:
            continue
        on = day_read(said, dates)
        if on is None or on.date() <= day:
            fine.add(texts)
            continue
        what = f"{on.date()} is yet to come, as at {day}"
        faults.tell("RDG009", what, record.place("on"), point=point, item=item, read=bool(point) or not work)
