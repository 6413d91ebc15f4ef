"""Whether the air of one hour is within the limits of a job and of the product that goes on in it, and which limit it misses.

Asked by the plan of a job, for every hour whose air the schedule states. An hour that does not state its humidity is held against
the temperatures alone.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator, Sequence

from specgen.facts.job.moist_air import unit_of
from specgen.model.product import ApplicationClimate
from specgen.model.schedule import HourOfAir
from specgen.trade.known import NotKnown, worked_out
from specgen.trade.moist_air import Air, absolute_humidity, dew_point, margin, vapour_pressure
from specgen.trade.working import Working
from specgen.units.quantity import Quantity, Range

Named = tuple[str, ApplicationClimate]
"""Whose limits they are, and the limits."""


Moist = tuple[Working, Working] | NotKnown
"""The water and the dew point of air, or that there is no such air."""


def moist(air: Quantity, humidity: Quantity) -> Moist:
    """What a plan keeps, for the same air comes again with every product."""

    def work_out() -> tuple[Working, Working]:
        pressure = vapour_pressure("hour.vapour", Air(air, humidity))
        return absolute_humidity("hour.water", pressure, air), dew_point("hour.dew", pressure)

    return worked_out("water in the air", work_out)


def not_allowed(
    hour: HourOfAir, climates: Sequence[Named], known: Callable[[Quantity, Quantity], Moist] = moist
) -> str:
    """The first limit that the air or the part of the hour misses, in words; empty where it misses none."""
    return next(_missed(hour, climates, known), "")


def _missed(hour: HourOfAir, climates: Sequence[Named], known: Callable[[Quantity, Quantity], Moist]) -> Iterator[str]:
    surface = hour.surface or hour.air
    for named, climate in climates:
        yield from _outside("the air is", hour.air, str(hour.air), climate.air, named)
        yield from _outside("the surface is", surface, str(surface), climate.surface, named)
        if hour.humidity is not None:
            yield from _outside("the air is at", hour.humidity, str(hour.humidity), climate.humidity, named)
    asked = any(climate.absolute_humidity or climate.dew_point_margin for _, climate in climates)
    if hour.humidity is None or not asked:
        return
    found = known(hour.air, hour.humidity)
    if isinstance(found, NotKnown):
        yield found.why
        return
    water, dew = found
    for named, climate in climates:
        yield from _outside("the air holds", water.quantity, water.printed(), climate.absolute_humidity, named)
        least = climate.dew_point_margin.low if climate.dew_point_margin is not None else None
        if least is not None:
            above = margin("hour.above", surface, dew, unit_of(least))
            if above.quantity < least:
                yield f"the surface is {above.printed()} above the dew point, and {named} asks for {least} at least"


def _outside(what: str, found: Quantity, printed: str, kept: Range | None, named: str) -> Iterator[str]:
    if kept is None:
        return
    if kept.low is not None and found < kept.low:
        yield f"{what} {printed}, and {named} asks for {kept.low} at least"
    elif kept.high is not None and found > kept.high:
        yield f"{what} {printed}, and {named} allows {kept.high} at most"
