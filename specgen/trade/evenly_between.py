"""A time at a temperature between two for which it is stated. Called by the facts on drying and on overcoating intervals."""

from __future__ import annotations

from specgen.units.quantity import Quantity


def evenly_between(cold: tuple[Quantity, Quantity], warm: tuple[Quantity, Quantity], at: Quantity) -> Quantity:
    """The time at `at`, taken to fall evenly from that of the colder air to that of the warmer: each a temperature and its time.

    An estimate on the long side, for times fall ever slower with warmth. It never stands in for a stated time.
    """
    (low, long), (high, short) = cold, warm
    share = (at.base - low.base) / (high.base - low.base)
    return Quantity.of("duration", long.number - share * (long.number - short.to(long.unit)), long.unit)
