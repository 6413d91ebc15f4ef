"""Quantities as a document prints them: the author's figure and unit, and the project's second unit in brackets.

Called by `views` and, for unit signs, by `trade.working`.
"""

from __future__ import annotations

from collections.abc import Mapping

from specgen.units.locale import ENGLISH, Locale
from specgen.units.quantity import Quantity, Range
from specgen.units.rounding import round_half_up, significant

_SIGNS = {
    "um": "µm",
    "μm": "µm",
    "degC": "°C",
    "degF": "°F",
    "m2": "m²",
    "cm2": "cm²",
    "ft2": "ft²",
    "ml": "mL",
    "l": "L",
    "mils": "mil",
    "m2/L": "m²/L",
    "ft2/gal": "ft²/gal",
    "g/cm3": "g/cm³",
    "mg/m2": "mg/m²",
    "g/m2": "g/m²",
    "%RH": "% RH",
    "m3": "m³",
    "ft3": "ft³",
    "m3/h": "m³/h",
    "m3/min": "m³/min",
    "ft3/min": "ft³/min",
    "mg/m3": "mg/m³",
    "ug/m3": "µg/m³",
    "g/m3": "g/m³",
    "m3/L": "m³/L",
    "ft3/gal": "ft³/gal",
    "g O3/g": "g O₃/g",
}

# The phrases of a range.
BETWEEN, AT_LEAST, AT_MOST = "{low} to {high}", "at least {}", "at most {}"


def unit_sign(unit: str) -> str:
    """The unit as printed: um is µm, degC is °C."""
    return _SIGNS.get(unit, unit)


def show(value: Quantity, second: Mapping[str, str] | None = None, language: Locale = ENGLISH) -> str:
    """`60 µm`, or `60 µm (2.36 mil)` where `second` names another unit for the kind."""
    return _with_second(_figure(value), unit_sign(value.unit), [value], second, language)


def show_range(value: Range, second: Mapping[str, str] | None = None, language: Locale = ENGLISH) -> str:
    """`40 to 60 µm`, `at least 40 µm`, `at most 60 µm`, with the second unit in brackets where one is asked for."""
    if value.low is not None and value.high is not None:
        between = language(BETWEEN)
        if value.low.unit != value.high.unit:
            low, high = (show(limit, second, language) for limit in (value.low, value.high))
            return between.format(low=low, high=high)
        figures = between.format(low=_figure(value.low), high=_figure(value.high))
        return _with_second(figures, unit_sign(value.high.unit), [value.low, value.high], second, language)
    if value.low is not None:
        return language(AT_LEAST).format(show(value.low, second, language))
    return language(AT_MOST).format(show(value.high, second, language)) if value.high is not None else ""


def _figure(value: Quantity) -> str:
    return value.digits or f"{significant(value.number):f}"


def _with_second(
    figures: str, unit: str, values: list[Quantity], second: Mapping[str, str] | None, language: Locale
) -> str:
    text = f"{language.figures(figures)}\N{NO-BREAK SPACE}{unit}"
    other = (second or {}).get(values[0].kind)
    if other is None or unit_sign(other) == unit:
        return text
    digits = [_second_figure(value, other) for value in values]
    both = digits[0] if len(digits) == 1 else language(BETWEEN).format(low=digits[0], high=digits[1])
    return f"{text} ({language.figures(both)}\N{NO-BREAK SPACE}{unit_sign(other)})"


def _second_figure(value: Quantity, unit: str) -> str:
    number = value.to(unit)
    # A whole degree is as fine as anyone reads a shop thermometer; elsewhere three digits keep the author's meaning.
    return str(round_half_up(number, 0) if value.kind == "temperature" else significant(number))
