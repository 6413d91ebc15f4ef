"""Water in the air of a job: where it is driest, what a product asks of it, and what puts air right that is outside a limit.

Absolute humidity, not relative, says whether a hardener is released: 40 % is 3.8 g/m³ at 10 °C and 9.2 at 25 °C. Warming alone
adds none, and drying takes it away. Rules, the command on climate and the pages ask here, so that all give the same advice.
"""

from __future__ import annotations

from collections.abc import Sequence
from fractions import Fraction
from typing import Literal, NamedTuple

from specgen.facts.job.dew_point import least_margin
from specgen.model.job import Job
from specgen.model.product import ApplicationClimate, Product
from specgen.model.spec import Spec
from specgen.trade.known import NotKnown, worked_out
from specgen.trade.moist_air import (
    Air,
    absolute_humidity,
    dew_point,
    margin,
    pressure_of,
    relative_humidity,
    saturation_pressure,
    vapour_pressure,
)
from specgen.trade.working import Working
from specgen.units.display import show
from specgen.units.quantity import Quantity

_STEP = Fraction(1)
_WARMEST = Fraction(40)

HEATERS = "No direct-fired or unflued heater and no ignition source where paint is sprayed or dries."
DRY_AIR = "heating alone adds no water"


class Held(NamedTuple):
    """The water in the air at one temperature and relative humidity."""

    air: Quantity
    humidity: Quantity
    water: Working


class Bring(NamedTuple):
    """How air comes to hold the water asked for: warm air and parts to `air` first where that differs, then humidify to `humidity`.

    `humidity` in whole %, rounded up, and what the surface is then above the dew point.
    """

    warm_first: bool
    air: Quantity
    humidity: Quantity
    above_dew_point: Working

    def __str__(self) -> str:
        humidify = f"humidify to at least {self.humidity} at {show(self.air)}"
        above = f"the surface is then {self.above_dew_point.printed()} above the dew point"
        if self.warm_first:
            first = f"warm air and parts to {show(self.air)} first"
            return f"{first}, then {humidify}, then check humidity and dew point again ({above})"
        return f"{humidify}, with the parts as warm as the air ({above})"


class Limits(NamedTuple):
    """What job and products together allow while the paint goes on; None where nobody limits it."""

    coldest: Quantity | None
    warmest: Quantity | None
    driest: Quantity | None
    most_humid: Quantity | None
    water: Quantity | None
    margin: Quantity


def limits(job: Job, spec: Spec) -> Limits:
    """The narrowest limits of the job and all its products."""
    return _narrowest([job.climate, *(product.climate for product in spec.products_of(job))])


def limits_of_products(job: Job, spec: Spec) -> Limits:
    """The narrowest limits of all products of a job."""
    return _narrowest([product.climate for product in spec.products_of(job)])


def _narrowest(stated: Sequence[ApplicationClimate | None]) -> Limits:
    climates = [climate for climate in stated if climate is not None]
    airs = [c.air for c in climates if c.air is not None]
    humidities = [c.humidity for c in climates if c.humidity is not None]
    waters = [c.absolute_humidity for c in climates if c.absolute_humidity is not None]
    margins = [c.dew_point_margin.low for c in climates if c.dew_point_margin is not None]
    kept = max((low for low in margins if low is not None), default=least_margin(None)[0])
    return Limits(
        max((air.low for air in airs if air.low is not None), default=None),
        min((air.high for air in airs if air.high is not None), default=None),
        max((entry.low for entry in humidities if entry.low is not None), default=None),
        min((entry.high for entry in humidities if entry.high is not None), default=None),
        max((entry.low for entry in waters if entry.low is not None), default=None),
        kept,
    )


def water_wanted(job: Job, spec: Spec) -> tuple[Product, Quantity] | None:
    """The product of the job that states the highest minimum of water in the air, with it; None where none states one."""
    stated = [(product, least) for product in spec.products_of(job) if (least := _least(product)) is not None]
    return max(stated, key=lambda entry: entry[1], default=None)


def driest(climate: ApplicationClimate) -> Held | NotKnown:
    """The water in the coldest and driest air a job allows."""
    air = climate.air.low if climate.air is not None else None
    humidity = climate.humidity.low if climate.humidity is not None else None
    named = (("lowest air temperature", air), ("lowest relative humidity", humidity))
    missing = tuple(name for name, stated in named if stated is None)
    if air is None or humidity is None:
        return NotKnown("absolute humidity", f"its {' and its '.join(missing)} are not stated", missing)
    return held(air, humidity)


def held(air: Quantity, humidity: Quantity) -> Held | NotKnown:
    """The water in air of that temperature and relative humidity; NotKnown where there is no such air."""

    def work_out() -> Held:
        pressure = vapour_pressure("vapour", Air(air, humidity))
        return Held(air, humidity, absolute_humidity("water", pressure, air))

    return worked_out("absolute humidity", work_out)


def warmed(outside: Quantity, humidity: Quantity, inside: Quantity) -> Working | NotKnown:
    """Relative humidity that outside air comes to once it is warmed: its water stays the same."""

    def work_out() -> Working:
        pressure = vapour_pressure("outside", Air(outside, humidity))
        return relative_humidity("inside", pressure, inside)

    return worked_out("relative humidity", work_out)


def brought(air: Quantity, wanted: Quantity, allowed: Limits) -> Bring | None:
    """The mildest way to bring air of that temperature to hold `wanted` (g/m3), parts as warm as the air.

    None where no temperature allowed holds the water within the humidity limit and the margin over the dew point.
    """
    here = air.to("degC")
    number = max(here, allowed.coldest.to("degC") if allowed.coldest is not None else here)
    top = allowed.warmest.to("degC") if allowed.warmest is not None else _WARMEST
    while number <= max(top, here):
        at = air if number == here else Quantity.of("temperature", number, "degC", f"{float(number):g}")
        pressure = pressure_of("needed", wanted, at)
        if pressure.number <= saturation_pressure("most", at).number:
            humidity = _whole_percent(relative_humidity("needed", pressure, at).number)
            if allowed.driest is not None:
                humidity = max(humidity, allowed.driest)
            reached = vapour_pressure("reached", Air(at, humidity))
            above = margin("margin", at, dew_point("dew", reached), unit_of(allowed.margin))
            within = allowed.most_humid is None or humidity <= allowed.most_humid
            if within and above.quantity >= allowed.margin:
                return Bring(number != here, at, humidity, above)
        number += _STEP
    return None


def advice_on_dry_air(air: Quantity, wanted: Quantity, allowed: Limits) -> str:
    """What to do where the air holds less water than wanted, in one sentence; whoever prints it adds `HEATERS`."""
    way = brought(air, wanted, allowed)
    if way is None:
        return (
            f"{DRY_AIR}, and no air within the limits holds so much; choose another product or wait for milder weather"
        )
    return f"{DRY_AIR}; {way}"


def unit_of(margin: Quantity) -> Literal["K", "degF"]:
    """The unit a margin over the dew point is written in: 3 K and 5 degF are two limits."""
    return "degF" if margin.unit == "degF" else "K"


def _least(product: Product) -> Quantity | None:
    stated = product.climate.absolute_humidity if product.climate is not None else None
    return stated.low if stated is not None else None


def _whole_percent(number: Fraction) -> Quantity:
    whole = -(-number.numerator // number.denominator)
    return Quantity.of("humidity", Fraction(whole), "%", str(whole))
