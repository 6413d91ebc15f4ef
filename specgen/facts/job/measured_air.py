"""Air that was measured at the part, held against every limit of a job and its products, and what would put it right.

A limit is held in its own unit, the margin over the dew point too. The advice never dries air that has too little water, never
warms alone what lacks water, and names heaters only with their caution. Asked by the command on climate.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from specgen.facts.job.moist_air import DRY_AIR, Limits, advice_on_dry_air, limits, unit_of, water_wanted
from specgen.facts.layer.waits import Wait, waits
from specgen.facts.product.curing import cured_by_moisture
from specgen.model.job import Job
from specgen.model.product import ApplicationClimate
from specgen.model.spec import Spec
from specgen.model.system import System
from specgen.trade.known import NotKnown, worked_out
from specgen.trade.moist_air import (
    Air,
    absolute_humidity,
    dew_point,
    humidity_ratio,
    margin,
    vapour_pressure,
    wet_bulb,
)
from specgen.trade.working import Working
from specgen.units.display import show
from specgen.units.quantity import Quantity, Range


@dataclass(frozen=True, slots=True)
class Measured:
    """Air and part as measured."""

    air: Quantity
    humidity: Quantity
    surface: Quantity


@dataclass(frozen=True, slots=True)
class Limit:
    """A limit and whose it is, as an address of the sources."""

    range: Range
    of: str
    met: bool


@dataclass(frozen=True, slots=True)
class Verdict:
    """One condition: what was found, as a figure too, every limit on it, and what to do where one is not met (else empty).

    `name` is what the sources call its limit.
    """

    what: str
    name: str
    quantity: Quantity
    found: str
    limits: tuple[Limit, ...]
    put_right: str = ""

    @property
    def met(self) -> bool:
        return all(limit.met for limit in self.limits)


@dataclass(frozen=True, slots=True)
class Assessed:
    """Figures of the moist air, the verdict on every limit, and how long each coat of each system would wait in it."""

    figures: tuple[Working, ...]
    verdicts: tuple[Verdict, ...]
    waits: tuple[tuple[System, tuple[Wait, ...]], ...]

    @property
    def met(self) -> bool:
        return all(verdict.met for verdict in self.verdicts)


def assess(job: Job, spec: Spec, at: Measured) -> Assessed | NotKnown:
    """NotKnown where there is no such air."""
    return worked_out("the air", lambda: _assessed(job, spec, at))


def _assessed(job: Job, spec: Spec, at: Measured) -> Assessed:
    pressure = vapour_pressure("air.vapour_pressure", Air(at.air, at.humidity))
    dew = dew_point("air.dew_point", pressure)
    water = absolute_humidity("air.absolute_humidity", pressure, at.air)
    above = margin("air.margin", at.surface, dew, unit_of(limits(job, spec).margin))
    bulb = wet_bulb("air.wet_bulb", Air(at.air, at.humidity))
    ratio = humidity_ratio("air.humidity_ratio", pressure)
    climates = tuple(_climates(job, spec))
    moist = any(cured_by_moisture(product) for product in spec.products_of(job))
    advice = _Advice(at, limits(job, spec), _wanted(job, spec), moist, dew)
    verdicts = tuple(_judged(climates, at, water, dew, advice))
    waiting = tuple((system, waits(system, spec, at.air, at.humidity)) for system in spec.systems_of(job))
    return Assessed((dew, above, water, ratio, bulb), verdicts, waiting)


def _wanted(job: Job, spec: Spec) -> Quantity | None:
    asked = water_wanted(job, spec)
    own = job.climate.absolute_humidity.low if job.climate is not None and job.climate.absolute_humidity else None
    stated = [water for water in (own, asked[1] if asked is not None else None) if water is not None]
    return max(stated, default=None)


def _climates(job: Job, spec: Spec) -> Iterator[tuple[str, ApplicationClimate]]:
    if job.climate is not None:
        yield f"jobs.{job.id}", job.climate
    for product in spec.products_of(job):
        if product.climate is not None:
            yield f"products.{product.id}", product.climate


@dataclass(frozen=True, slots=True)
class _Advice:
    """What to do about a limit that is not met, by what is wrong with the air or the part."""

    at: Measured
    allowed: Limits
    wanted: Quantity | None
    moist: bool
    dew: Working

    def cold_air(self, limit: Range) -> str:
        dry = f"; {DRY_AIR}, and relative humidity falls: measure it again" if self.moist else ""
        return f"warm the air to {limit.low} or more{dry}"

    def warm_air(self, limit: Range) -> str:
        return f"wait for air of {limit.high} or less, or work in the shade or at night"

    def cold_part(self, limit: Range) -> str:
        return f"warm the part through to {limit.low} or more before anything is sprayed"

    def warm_part(self, limit: Range) -> str:
        return f"let the part cool to {limit.high} or less, out of the sun"

    def dry(self, limit: Range) -> str:
        return f"humidify to {limit.low} or more; {DRY_AIR}, it lowers relative humidity"

    def little_water(self, limit: Range) -> str:
        wanted = self.wanted or limit.low
        return advice_on_dry_air(self.at.air, wanted, self.allowed) if wanted is not None else ""

    def humid(self, limit: Range) -> str:
        until = f"until relative humidity is {limit.high} or less"
        if not self.moist:
            return f"warm air and parts, or dry the air, {until}"
        least = f" below {self.wanted} of water" if self.wanted is not None else ""
        return f"warm air and parts {until}; do not dry the air{least}, for the hardener needs the water"

    def much_water(self, limit: Range) -> str:
        return f"dry or change the air until it holds {limit.high} of water or less"

    def near_dew_point(self, limit: Range) -> str:
        return (
            f"warm the part through until it is {limit.low} or more above the {self.dew.name}, {self.dew.printed()}; "
            f"spray nothing on a part that is wet, and clean one that was"
        )


def _judged(
    climates: tuple[tuple[str, ApplicationClimate], ...], at: Measured, water: Working, dew: Working, advice: _Advice
) -> Iterator[Verdict]:
    for what, name, found, low, high in (
        ("air temperature", "air", at.air, advice.cold_air, advice.warm_air),
        ("surface temperature", "surface", at.surface, advice.cold_part, advice.warm_part),
        ("relative humidity", "humidity", at.humidity, advice.dry, advice.humid),
        ("absolute humidity", "absolute_humidity", water.quantity, advice.little_water, advice.much_water),
    ):
        stated = [(of, kept) for of, climate in climates if (kept := getattr(climate, name)) is not None]
        if not stated:
            continue
        printed = water.printed() if found is water.quantity else show(found)
        limits_ = tuple(Limit(kept, of, not (_below(found, kept) or _above(found, kept))) for of, kept in stated)
        below = [kept for _, kept in stated if _below(found, kept)]
        above = [kept for _, kept in stated if _above(found, kept)]
        right = low(max(below, key=_low)) if below else high(min(above, key=_high)) if above else ""
        yield Verdict(what, name, found, printed, limits_, right)
    margins = [(of, kept) for of, climate in climates if (kept := climate.dew_point_margin) is not None and kept.low]
    if margins:
        judged = tuple(
            Limit(kept, of, margin("margin", at.surface, dew, unit_of(_low(kept))).quantity >= _low(kept))
            for of, kept in margins
        )
        missed = [limit.range for limit in judged if not limit.met]
        right = advice.near_dew_point(max(missed, key=_low)) if missed else ""
        nearest = margin("margin", at.surface, dew, unit_of(_low(margins[0][1])))
        yield Verdict(
            "surface above the dew point", "dew_point_margin", nearest.quantity, nearest.printed(), judged, right
        )


def _below(found: Quantity, kept: Range) -> bool:
    return kept.low is not None and found < kept.low


def _above(found: Quantity, kept: Range) -> bool:
    return kept.high is not None and found > kept.high


def _low(kept: Range) -> Quantity:
    if kept.low is None:
        raise ValueError(f"{kept} has no lower end")
    return kept.low


def _high(kept: Range) -> Quantity:
    if kept.high is None:
        raise ValueError(f"{kept} has no upper end")
    return kept.high
