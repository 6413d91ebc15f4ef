"""The air of a job by the hour while it is planned: hour by hour where the schedule states it, else the climate of the job.

An interval is counted from the coldest hour it holds, its maximum from the warmest; where only the climate of the job is known
its coldest and its warmest air stand for every hour. Cure is gathered hour by hour and an hour without a stated time counts for
nothing. Called by `schedule`.
"""

from __future__ import annotations

from collections.abc import Callable, Sequence
from datetime import datetime, timedelta
from fractions import Fraction
from itertools import pairwise
from typing import NamedTuple

from specgen.model.schedule import HourOfAir
from specgen.units.quantity import Quantity

HOUR = 60

Times = Callable[["Hour"], int | None]
"""Minutes that a wait takes in the air of one hour; None where nothing is stated for it, or there is no limit."""


class Hour(NamedTuple):
    """The air of one hour. `humidity` None where it is not known."""

    air: Quantity
    humidity: Quantity | None


class HourlyAir(NamedTuple):
    """Hours from the start of the plan on; a single one stands for all."""

    hours: tuple[Hour, ...]

    @property
    def same(self) -> bool:
        return len(self.hours) == 1

    def at(self, minute: int) -> Hour | None:
        """The hour a minute lies in; None past the last."""
        if self.same:
            return self.hours[0]
        number = minute // HOUR
        return self.hours[number] if number < len(self.hours) else None

    def first_after(self, end: int, times: Times) -> int | None:
        """The first minute by which the longest time of all hours since `end` has passed; None where one is not stated."""
        longest, minute = 0, end
        while (hour := self.at(minute)) is not None:
            needed = times(hour)
            if needed is None:
                return None
            longest = max(longest, needed)
            close = None if self.same else (minute // HOUR + 1) * HOUR
            reached = max(end + longest, minute)
            if close is None or reached <= close:
                return reached
            minute = close
        return None

    def last_after(self, end: int, times: Times) -> int | None:
        """The last minute before the shortest time of all hours since `end` has passed; None where no hour has a limit."""
        shortest: int | None = None
        minute = end
        while (hour := self.at(minute)) is not None:
            limit = times(hour)
            if limit is not None:
                shortest = limit if shortest is None else min(shortest, limit)
            if self.same:
                return None if shortest is None else end + shortest
            close = (minute // HOUR + 1) * HOUR
            if shortest is not None and end + shortest <= close:
                return max(end + shortest, minute)
            minute = close
        return minute

    def gathered_after(self, end: int, times: Times) -> int | None:
        """When the hours since `end` add up to a whole, each by the share of its own time; None where they never do."""
        share, minute = Fraction(0), end
        while (hour := self.at(minute)) is not None:
            needed = times(hour)
            if self.same:
                return None if needed is None else end + needed
            close = (minute // HOUR + 1) * HOUR
            if needed is not None:
                if needed == 0 or share + Fraction(close - minute, needed) >= 1:
                    left = (1 - share) * needed
                    return minute + -(-left.numerator // left.denominator)
                share += Fraction(close - minute, needed)
            minute = close
        return None


class Hole(NamedTuple):
    """An hour of the profile that does not follow on the one before: a gap, a repeat, or a change of the clock."""

    entry: HourOfAir
    expected: datetime


def from_profile(stated: Sequence[HourOfAir], start: datetime) -> HourlyAir | Hole | None:
    """The hours from that of `start` on; None where the profile does not hold it."""
    for before, entry in pairwise(stated):
        if entry.begins != before.begins + timedelta(hours=1):
            return Hole(entry, before.begins + timedelta(hours=1))
    begun = [entry for entry in stated if entry.begins + timedelta(hours=1) > start]
    if not begun or begun[0].begins > start:
        return None
    return HourlyAir(tuple(Hour(entry.surface or entry.air, entry.humidity) for entry in begun))
