"""Moist air: vapour pressure, dew and frost point, absolute humidity, humidity ratio, wet bulb, and what is left of a margin.

Relative humidity is that over water at every temperature, as hygrometers show it. Below 0 °C a surface takes up water from
the frost point on, which lies above the dew point over water, so the frost point is given there and named so. Air pressure
is that at sea level. Called by facts on the air of a job, and by the commands on climate and schedule.
"""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction
from typing import Literal

from specgen.standards.citations import ARITHMETIC, Citation
from specgen.standards.tables import Row, table
from specgen.trade.given import Source, amount, take, take_cell
from specgen.trade.transcendental import exponential
from specgen.trade.working import Input, Working, WorkingError, work
from specgen.units.locale import N_
from specgen.units.quantity import Quantity

_FORM = "moist_air"
_CONSTANTS = "moist_air_constants"
_BULB = "wet_bulb"
_RATIO = ("humidity_ratio", "g/kg")
_HALVINGS = 40
LOWEST, HIGHEST = Fraction(-40), Fraction(50)
"""Temperatures in °C within which the vapour pressure formula holds (WMO: 0.4 %)."""

Over = Literal["water", "ice"]

_PER_CENT = N_("100: per cent")
_GRAMS = N_("1000: g in a kg")
_MILLION = N_("1000000: g in a kg times Pa in a kPa")
_TRIAL = N_("found by trial: t_w gives itself back")


@dataclass(frozen=True, slots=True)
class Air:
    """Air at a temperature and a relative humidity over water."""

    temperature: Source
    humidity: Source

    def __post_init__(self) -> None:
        """Raises WorkingError where there is no such air, or the formula does not hold for it."""
        number = _number(self.temperature, "degC")
        if not LOWEST <= number <= HIGHEST:
            raise WorkingError(f"the formula holds from {LOWEST} to {HIGHEST} °C; a reading in °F entered as °C?")
        if not 0 < _number(self.humidity, "%") <= 100:
            raise WorkingError("relative humidity lies above 0 and up to 100 %")


def saturation_pressure(id: str, temperature: Source) -> Working:
    """Vapour pressure of saturated air over water in kPa. Source: Magnus form of the table moist_air."""
    p_0, a, b = _form("water")
    inputs = (p_0, a, b, _temperature(temperature))
    return _pressure(id, N_("vapour pressure at saturation"), "p_0 * exp(a * t / (b + t))", inputs)


def vapour_pressure(id: str, air: Air) -> Working:
    """Pressure of the water vapour in kPa. Source: Magnus form of the table moist_air."""
    inputs = (*_form("water"), _temperature(air.temperature), _humidity(air.humidity))
    return _pressure(id, N_("vapour pressure"), "h / 100 * p_0 * exp(a * t / (b + t))", inputs, _PER_CENT)


def dew_point(id: str, pressure: Source) -> Working:
    """Temperature in °C at which air of that vapour pressure (kPa) deposits water: the dew point, below 0 °C the frost point.

    Source: Magnus form of the table moist_air, over water or over ice.
    """
    over_water = _dew_point(id, N_("dew point"), pressure, "water")
    return over_water if over_water.number >= 0 else _dew_point(id, N_("frost point"), pressure, "ice")


def dew_point_over_water(id: str, pressure: Source) -> Working:
    """The dew point over water also below 0 °C, as the usual tables print it."""
    return _dew_point(id, N_("dew point over water"), pressure, "water")


def absolute_humidity(id: str, pressure: Source, temperature: Source) -> Working:
    """Water in the air in g/m3, from the vapour pressure (kPa) and the air temperature. Source: ideal gas law."""
    inputs = (_vapour(pressure), _gas_constant(), _temperature(temperature), _zero())
    formula = "1000000 * p_v / (R_v * (t + T_0))"
    name = N_("absolute humidity")
    return work(
        id, name, formula, inputs, kind="absolute_humidity", unit="g/m3", places=1, source=ARITHMETIC, note=_MILLION
    )


def pressure_of(id: str, absolute: Source, temperature: Source) -> Working:
    """Vapour pressure in kPa of air that holds `absolute` g/m3 of water. Source: ideal gas law."""
    inputs = (
        take("c", "absolute humidity", absolute, "absolute_humidity", "g/m3"),
        _gas_constant(),
        _temperature(temperature),
        _zero(),
    )
    return _pressure(id, N_("vapour pressure"), "c * R_v * (t + T_0) / 1000000", inputs, _MILLION, ARITHMETIC)


def humidity_ratio(id: str, pressure: Source) -> Working:
    """Water in g for each kg of dry air, at sea level, from the vapour pressure (kPa). Source: ideal gas law."""
    inputs = (
        take_cell("epsilon", "mass ratio of water to dry air", _CONSTANTS, _constant("mass_ratio"), "figure"),
        take_cell("p", "air pressure", _CONSTANTS, _constant("air_pressure"), "figure", "pressure", "kPa"),
        _vapour(pressure),
    )
    formula, name = "1000 * epsilon * p_v / (p - p_v)", N_("humidity ratio")
    return work(id, name, formula, inputs, kind="humidity_ratio", unit="g/kg", places=2, source=ARITHMETIC, note=_GRAMS)


def relative_humidity(id: str, pressure: Source, temperature: Source) -> Working:
    """Relative humidity in % of air of that vapour pressure (kPa) at a temperature: what warming or cooling makes of it.

    Raises WorkingError where the air cannot hold that much water.
    """
    inputs = (_vapour(pressure), *_form("water"), _temperature(temperature))
    formula = "100 * p_v / (p_0 * exp(a * t / (b + t)))"
    if _number(pressure, "kPa") > saturation_pressure(id, temperature).number:
        raise WorkingError("air of that temperature cannot hold so much water")
    name = N_("relative humidity")
    return work(
        id, name, formula, inputs, kind="humidity", unit="%", places=0, source=table(_FORM).citation, note=_PER_CENT
    )


def margin(id: str, surface: Source, dew: Source, unit: Literal["K", "degF"] = "K") -> Working:
    """How far the surface is above the dew or frost point, in the unit its limit is written in; negative where water is on it."""
    degrees = "degF" if unit == "degF" else "degC"
    inputs = (
        take("t_s", "surface temperature", surface, "temperature", degrees),
        take("t_d", "dew point", dew, "temperature", degrees),
    )
    name = N_("surface temperature above the dew point")
    return work(id, name, "t_s - t_d", inputs, kind="temperature_difference", unit=unit, places=1, source=ARITHMETIC)


def wet_bulb(id: str, air: Air) -> Working:
    """Thermodynamic wet bulb temperature in °C at sea level, with ice on the bulb below 0 °C.

    Source: heat balance of the table wet_bulb; found by halving the interval, and printed as the equation it satisfies.
    """
    pressure = vapour_pressure(f"{id}.vapour", air)
    ratio = humidity_ratio(f"{id}.ratio", pressure)
    temperature = _number(air.temperature, "degC")
    bulb: Over = "water"
    found = _halved(temperature, ratio.number, bulb)
    if found < 0:
        bulb = "ice"
        found = _halved(temperature, ratio.number, bulb)
    at = Quantity.of("temperature", found, "degC")
    inputs = (
        _temperature(air.temperature),
        take("t_w", "wet bulb", at, "temperature", "degC"),
        take("w_s", "humidity ratio at saturation and t_w", _saturated_ratio(f"{id}.saturated", at, bulb), *_RATIO),
        take("w", "humidity ratio", ratio, *_RATIO),
        take_cell("L", "heat of evaporation at 0 °C, kJ/kg", _BULB, _bulb(bulb), "heat"),
        take_cell("l", "its fall for each kelvin, kJ/(kg K)", _BULB, _bulb(bulb), "fall"),
        take_cell("c_w", "specific heat of what wets the bulb, kJ/(kg K)", _BULB, _bulb(bulb), "wetting"),
        take_cell("c_v", "specific heat of water vapour, kJ/(kg K)", _CONSTANTS, _constant("vapour_heat"), "figure"),
        take_cell("c_a", "specific heat of dry air, kJ/(kg K)", _CONSTANTS, _constant("dry_air_heat"), "figure"),
    )
    note = f"{_TRIAL}; {_GRAMS}"
    formula = "t - ((L - l * t_w) * w_s - (L + c_v * t - c_w * t_w) * w) / (1000 * c_a)"
    name, source = N_("wet bulb"), table(_BULB).citation
    return work(id, name, formula, inputs, kind="temperature", unit="degC", places=1, source=source, note=note)


def _halved(temperature: Fraction, ratio: Fraction, bulb: Over) -> Fraction:
    """The wet bulb in °C to 10^-9 K, for a humidity ratio in g/kg."""
    heat, fall, wetting = (Fraction(_bulb(bulb)[column]) for column in ("heat", "fall", "wetting"))
    vapour, dry = (Fraction(_constant(id)["figure"]) for id in ("vapour_heat", "dry_air_heat"))
    low, high = 2 * LOWEST, temperature
    for _ in range(_HALVINGS):
        middle = (low + high) / 2
        wet = (heat - fall * middle) * _saturated_number(middle, bulb) - 1000 * dry * (temperature - middle)
        held = ratio * (heat + vapour * temperature - wetting * middle)
        low, high = (low, middle) if wet > held else (middle, high)
    return high


def _saturated_number(temperature: Fraction, over: Over) -> Fraction:
    """Humidity ratio in g/kg of saturated air at °C."""
    row = table(_FORM).row("over", over)
    p_0, a, b = (Fraction(row[column]) for column in ("p_0_kpa", "a", "b"))
    pressure = p_0 * exponential(a * temperature / (b + temperature))
    return (
        1000
        * Fraction(_constant("mass_ratio")["figure"])
        * pressure
        / (Fraction(_constant("air_pressure")["figure"]) - pressure)
    )


def _saturated_ratio(id: str, temperature: Source, over: Over) -> Working:
    inputs = (*_form(over), _temperature(temperature))
    pressure = _pressure(f"{id}.pressure", N_("vapour pressure at saturation"), "p_0 * exp(a * t / (b + t))", inputs)
    return humidity_ratio(id, pressure)


def _dew_point(id: str, name: str, pressure: Source, over: Over) -> Working:
    inputs = (*_form(over), _vapour(pressure))
    formula = "b * ln(p_v / p_0) / (a - ln(p_v / p_0))"
    citation = table(_FORM).row_citation(table(_FORM).row("over", over))
    return work(id, name, formula, inputs, kind="temperature", unit="degC", places=1, source=citation)


def _pressure(
    id: str, name: str, formula: str, inputs: tuple[Input, ...], note: str = "", source: Citation | None = None
) -> Working:
    citation = source or table(_FORM).citation
    return work(id, name, formula, inputs, kind="pressure", unit="kPa", places=3, source=citation, note=note)


def _form(over: Over) -> tuple[Input, Input, Input]:
    row = table(_FORM).row("over", over)
    return (
        take_cell("p_0", "vapour pressure at 0 °C", _FORM, row, "p_0_kpa", "pressure", "kPa"),
        take_cell("a", "first constant of the form", _FORM, row, "a"),
        take_cell("b", "second constant of the form", _FORM, row, "b"),
    )


def _constant(id: str) -> Row:
    return table(_CONSTANTS).row("id", id)


def _bulb(bulb: Over) -> Row:
    return table(_BULB).row("bulb", bulb)


def _gas_constant() -> Input:
    return take_cell("R_v", "gas constant of water vapour, J/(kg K)", _CONSTANTS, _constant("gas_constant"), "figure")


def _zero() -> Input:
    return take_cell("T_0", "0 °C above absolute zero, K", _CONSTANTS, _constant("zero"), "figure")


def _temperature(value: Source) -> Input:
    return take("t", "temperature", value, "temperature", "degC")


def _humidity(value: Source) -> Input:
    return take("h", "relative humidity", value, "humidity", "%")


def _vapour(value: Source) -> Input:
    return take("p_v", "vapour pressure", value, "pressure", "kPa")


def _number(value: Source, unit: str) -> Fraction:
    figure = amount(value)
    if not isinstance(figure, Quantity):
        raise TypeError("a figure with a unit is taken")
    return figure.to(unit)
