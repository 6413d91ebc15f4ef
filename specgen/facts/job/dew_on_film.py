"""Dew on a film that is not yet dust-free, in the air that a schedule states hour by hour. Asked by the rule on it.

The plan gives the hours in which each coat is applied and dries. The stage is reached by the air of those hours, each counted by
the share of its own drying time; a coat whose drying is not stated for that air is told, not guessed.
"""

from __future__ import annotations

from collections.abc import Iterator
from datetime import datetime, timedelta
from typing import NamedTuple

from specgen.facts.job.air_allows import moist
from specgen.facts.job.hourly_air import Hour, HourlyAir, from_profile
from specgen.facts.job.moist_air import unit_of
from specgen.facts.job.plan import Plan, Step
from specgen.facts.layer.waits import reaches
from specgen.model.drying import DryingStage
from specgen.model.job import Job
from specgen.model.schedule import HourOfAir, Work
from specgen.model.spec import Spec
from specgen.model.system import Layer
from specgen.trade.known import NotKnown
from specgen.trade.moist_air import margin
from specgen.trade.working import Working
from specgen.units.quantity import Quantity

_HOUR = timedelta(hours=1)
_LOOKED_AT = timedelta(hours=12)
"""How long after a coat whose drying is not known the air is looked at."""


class Dew(NamedTuple):
    """The hour in which the surface is nearest to the dew point or below it, while a coat is wet, and by how much it is above."""

    step: Step
    layer: Layer
    entry: HourOfAir
    above: Working
    wet_until: datetime


class Untold(NamedTuple):
    """A coat of which it cannot be told until when it is wet, and why."""

    step: Step
    layer: Layer
    why: str


def dew_on_film(job: Job, spec: Spec, plan: Plan, kept: Quantity) -> Iterator[Dew | Untold]:
    """Of each coat of the plan the worst hour in which its wet film is less than `kept` above the dew point."""
    stated = job.schedule.air if job.schedule is not None else ()
    origin = plan.start.replace(minute=0, second=0, microsecond=0)
    air = from_profile(stated, origin) if stated else None
    if not isinstance(air, HourlyAir):
        return
    known: dict[str, Working | None] = {}
    for step in plan.steps:
        if step.work is not Work.APPLICATION or step.layer is None:
            continue
        until = _dust_free(spec, step, step.layer, air, origin)
        end = step.end + _LOOKED_AT if isinstance(until, str) else until
        wet = [one for one in stated if one.begins + _HOUR > step.start and one.begins < end]
        known |= {one.id: _above(one, kept) for one in wet if one.id not in known}
        found = [(above, one) for one in wet if (above := known[one.id]) is not None and above.quantity < kept]
        if found and isinstance(until, str):
            yield Untold(step, step.layer, until)
        elif found and not isinstance(until, str):
            above, worst = min(found, key=lambda pair: pair[0].number)
            yield Dew(step, step.layer, worst, above, until)


def _dust_free(spec: Spec, step: Step, layer: Layer, air: HourlyAir, origin: datetime) -> datetime | str:
    """When the film is dust-free, or why that cannot be told."""
    product = spec.product_of(layer)
    untold: list[str] = []

    def needed(hour: Hour) -> int | None:
        time = reaches(product, DryingStage.DUST_FREE, hour.air)
        if isinstance(time, NotKnown):
            untold.append(f"{product.id} does not state when it is dust-free at {hour.air}")
            return None
        return int(-(-time.to("min") // 1))

    reached = air.gathered_after(int((step.end - origin) / timedelta(minutes=1)), needed)
    if untold:
        return untold[0]
    if reached is None:
        return f"the stated air ends before {layer.id} is dust-free"
    return origin + timedelta(minutes=reached)


def _above(entry: HourOfAir, kept: Quantity) -> Working | None:
    """How far the surface is above the dew point; None where the hour does not say how damp it is, or there is no such air."""
    humidity = entry.humidity
    if humidity is None:
        return None

    found = moist(entry.air, humidity)
    if isinstance(found, NotKnown):
        return None
    _, dew = found
    return margin(f"{entry.id}.above", entry.surface or entry.air, dew, unit_of(kept))
