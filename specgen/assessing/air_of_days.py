"""Days on which a coat was applied and no air was recorded for it. Called by `assessment`."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from datetime import datetime, timedelta

from specgen.assessing.cells import has_time
from specgen.assessing.results import AirRead, BatchUsed, Did, Done
from specgen.model.job import Item
from specgen.units.locale import N_, phrase

_SHIFT = timedelta(hours=12)
"""Within which air recorded before midnight is still that of a coat after it. Ours, no source."""

_Moment = tuple[datetime, bool]
"""A day and time, and whether the time is known."""


def days_without_air(
    item: Item, coats: dict[str, str], air: Sequence[AirRead], work: Sequence[Done], batches: Sequence[BatchUsed]
) -> Iterator[str]:
    """A sentence for each coat and day; `coats` are the coats of the item, id to name. Air without a day is taken for any day."""
    for coat, called in coats.items():
        read = [one for one in air if one.coat == coat and one.item in {"", item.id}]
        if not read or any(one.on is None for one in read):
            continue
        measured = [(one.on, has_time(one.record.text("on"))) for one in read if one.on is not None]
        for applied in sorted({*_applied(item, coat, work, batches)}):
            if not any(_together(applied, one) for one in measured):
                text = N_("no air is recorded for {coat} on {day}, when it was applied")
                yield phrase(text, coat=called, day=applied[0].date().isoformat())


def _applied(item: Item, coat: str, work: Sequence[Done], batches: Sequence[BatchUsed]) -> Iterator[_Moment]:
    rows: tuple[Done | BatchUsed, ...] = (*(one for one in work if one.did is Did.APPLICATION), *batches)
    for one in rows:
        if one.on is not None and one.coat == coat and one.record.text("item") in {"", item.id}:
            yield one.on, has_time(one.record.text("on"))


def _together(applied: _Moment, measured: _Moment) -> bool:
    (one, one_timed), (other, other_timed) = applied, measured
    return one.date() == other.date() or (one_timed and other_timed and abs(one - other) < _SHIFT)
