"""Release and acceptance of items: one release of each, or of each of its parts, by somebody who is named, after the last record of it.

Called by `assessment`; what is not released is asked by `as_built`.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from datetime import datetime

from specgen.assessing.cells import Dates, day_read, has_time
from specgen.assessing.faults import Faults
from specgen.assessing.records import Record, columns
from specgen.assessing.repairs import surely_before
from specgen.assessing.results import Did, Done
from specgen.model.job import Item, Job

_texts = columns("item", "on", "work", "part")
_AFTER_WORK = frozenset({Did.ACCEPTANCE.value, Did.RELEASE.value})


def of_item(done: Iterable[Done], did: Did, item: Item) -> tuple[Done, ...]:
    """The rows of one kind of work on an item, in their order."""
    return tuple(one for one in done if one.did is did and one.record.text("item") in {"", item.id})


def not_released(done: Iterable[Done], item: Item) -> tuple[int, ...]:
    """The numbers of the parts of an item that no row releases; a row without a part releases all of them."""
    released = {one.record.part for one in of_item(done, Did.RELEASE, item)}
    return () if "" in released else tuple(n for n in range(1, item.count + 1) if str(n) not in released)


def tell_releases(job: Job, work: Sequence[Done], records: Sequence[Record], dates: Dates, faults: Faults) -> None:
    """Two releases of an item or part, and records of it that are later than its release."""
    told: set[tuple[str, int]] = set()
    for item in job.items:
        standing: dict[str, Done] = {}
        for release in of_item(work, Did.RELEASE, item):
            part, key = release.record.part, (release.record.source.file, release.record.row)
            twice = next((one for of, one in standing.items() if not part or of in {"", part}), None)
            if twice is not None and key not in told:
                told.add(key)
                first = twice.record
                what = f"{item.id} is released a second time; see row {first.row} of {first.source.file}"
                faults.tell("RDG021", what, release.record.place("work"), item=item.id, read=False)
            standing[part] = release
        for release in [standing[""]] if "" in standing else standing.values():
            _tell_later(item, release, records, dates, faults, told)


def _tell_later(
    item: Item, release: Done, records: Sequence[Record], dates: Dates, faults: Faults, told: set[tuple[str, int]]
) -> None:
    when = (release.on, release.timed)
    key, mine = (release.record.source.file, -release.record.row), release.record.part
    seen: dict[tuple[str, ...], bool] = {}
    for record in records:
        texts = _texts(record)
        of, on, work, part = texts
        if of not in {"", item.id} or not on or work.casefold() in _AFTER_WORK:
            continue
        if mine and part and record.part != mine:
            continue
        # thousands of rows say the same
        if texts not in seen:
            seen[texts] = _later(on, when, dates)
            if seen[texts] and key not in told:
                told.add(key)
                at = f"row {record.row} of {record.source.file}"
                what = f"{item.id} is released on {release.record.text('on')}, before the record of {on} in {at}"
                faults.tell("RDG021", what, release.record.place("on"), item=item.id, read=False)
                return


def _later(on: str, when: tuple[datetime, bool], dates: Dates) -> bool:
    day = day_read(on, dates)
    return day is not None and surely_before(when, (day, has_time(on)))
