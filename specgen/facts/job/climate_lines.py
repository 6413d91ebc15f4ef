"""Lines across air temperature and relative humidity: where a margin over the dew point ends, and where air holds so much water.

Points for a drawing, in °C and %. Asked by the view of the method statement.
"""

from __future__ import annotations

from fractions import Fraction

from specgen.trade.known import known, worked_out
from specgen.trade.moist_air import pressure_of, relative_humidity, saturation_pressure
from specgen.trade.working import Working
from specgen.units.quantity import Quantity

Line = tuple[tuple[float, float], ...]

_STEPS = 16
_SATURATED = 100.0


def humidity_of_margin(low: float, high: float, margin: Quantity) -> Line:
    """Relative humidity at which the dew point lies that far below the air, for a part as warm as the air."""
    apart = float(margin.to("K"))
    return tuple((at, _humidity(at, saturation_pressure("vapour", _at(at - apart)))) for at in _steps(low, high))


def humidity_of_water(low: float, high: float, water: Quantity) -> Line:
    """Relative humidity at which the air holds that much water; 100 where it cannot."""
    return tuple((at, _humidity(at, pressure_of("vapour", water, _at(at)))) for at in _steps(low, high))


def _humidity(at: float, pressure: Working) -> float:
    found = known(worked_out("relative humidity", lambda: relative_humidity("humidity", pressure, _at(at))))
    return _SATURATED if found is None else float(found.number)


def _steps(low: float, high: float) -> tuple[float, ...]:
    return tuple(low + (high - low) * step / _STEPS for step in range(_STEPS + 1))


def _at(degrees: float) -> Quantity:
    return Quantity.of("temperature", Fraction(degrees), "degC")
