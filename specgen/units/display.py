"""Quantities as a document prints them: the author's figure and unit, and the project's second unit in brackets.

Called by `views` and, for unit signs, by `trade.working`.
"""

from __future__ import annotations

from collections.abc import Mapping
from fractions import Fraction

from specgen.units.kinds import UNITS
from specgen.units.locale import ENGLISH, N_, Locale
from specgen.units.quantity import Quantity, Range
from specgen.units.rounding import round_half_up, significant

_FEWEST_DIGITS, _MOST_DIGITS = 2, 3
_MOST_PLACES = 6

NOMINAL_FILM = "nominal film"
"""What `second` names beside the kinds where 25 um count as a mil, as nominal films are specified."""
_NOMINAL_UM = Fraction(25)

# The phrases of a range.
BETWEEN, AT_LEAST, AT_MOST = N_("{low} to {high}"), N_("at least {}"), N_("at most {}")


def unit_sign(unit: str, number: Fraction | int = 2, language: Locale = ENGLISH) -> str:
    """The unit as printed: um is µm, degC is °C; a word in its form for the number, `1 day`, `2 days`.

    Raises KeyError for a unit without a line in `kinds.UNITS`: better no page than a unit nobody can read.
    """
    known = UNITS[unit]
    return language.plural(known.sign, known.many, number) if known.many else known.sign


def show(value: Quantity, second: Mapping[str, str] | None = None, language: Locale = ENGLISH) -> str:
    """`60 µm`, or `60 µm (2.4 mil)` where `second` names another unit for the kind."""
    return _with_second(_figure(value), [value], second, language)


def show_range(value: Range, second: Mapping[str, str] | None = None, language: Locale = ENGLISH) -> str:
    """`40 to 60 µm`, `at least 40 µm`, `at most 60 µm`, with the second unit in brackets where one is asked for."""
    if value.low is not None and value.high is not None:
        between = language(BETWEEN)
        if value.low.unit != value.high.unit:
            low, high = (show(limit, second, language) for limit in (value.low, value.high))
            return between.format(low=low, high=high)
        figures = between.format(low=_figure(value.low), high=_figure(value.high))
        return _with_second(figures, [value.low, value.high], second, language)
    if value.low is not None:
        return language(AT_LEAST).format(show(value.low, second, language))
    return language(AT_MOST).format(show(value.high, second, language)) if value.high is not None else ""


def _figure(value: Quantity) -> str:
    return value.digits or f"{significant(value.number):f}"


def _with_second(figures: str, values: list[Quantity], second: Mapping[str, str] | None, language: Locale) -> str:
    unit = unit_sign(values[-1].unit, values[-1].number, language)
    text = f"{language.figures(figures)}\N{NO-BREAK SPACE}{unit}"
    other = (second or {}).get(values[0].kind)
    if other in ("degC", "K") and unit_sign(other) == unit:
        # the reader who asks for it as a second unit thinks in the other
        other = "degF"
    if other is None or unit_sign(other) == unit:
        return text
    nominal = NOMINAL_FILM in (second or {})
    digits = [_second_figure(value, other, nominal) for value in values]
    both = digits[0] if len(digits) == 1 else language(BETWEEN).format(low=digits[0], high=digits[1])
    return f"{text} ({language.figures(both)}\N{NO-BREAK SPACE}{unit_sign(other)})"


def _second_figure(value: Quantity, unit: str, nominal: bool) -> str:
    # A whole degree is as fine as anyone reads a shop thermometer; elsewhere the digits are the author's, so that a change of
    # unit neither invents precision nor loses a tenth.
    if value.kind == "temperature":
        return str(round_half_up(value.to(unit), 0))
    if value.kind == "temperature_difference":
        # a margin of a few degrees is read to a tenth: 3 K is 5.4 degF, and 5 would be less than asked for
        tenth = round_half_up(value.to(unit), 1)
        return f"{tenth.normalize():f}"
    if value.kind == "thickness":
        return _film_figure(value, unit, nominal)
    return f"{significant(value.to(unit), _digits_of(value)):f}"


def _film_figure(value: Quantity, unit: str, nominal: bool) -> str:
    """A film in the other unit, its last place no finer than a quarter of the author's: 60 um is 2.4 mil, 3.5 mil is 89 um."""
    number = _nominal(value, unit) if nominal else value.to(unit)
    _, _, fraction = _figure(value).partition(".")
    # as fine as the author's last place is in the other unit
    finest = abs(number / value.number) / 10 ** len(fraction) if value.number else Fraction(1)
    places = next((count for count in range(_MOST_PLACES) if Fraction(1, 10**count) <= 4 * finest), _MOST_PLACES)
    rounded = round_half_up(number, places)
    whole = nominal and Fraction(rounded).denominator == 1
    return str(round_half_up(number, 0) if whole else rounded)


def _nominal(value: Quantity, unit: str) -> Fraction:
    """A film in the other unit, 25 um to the mil."""
    return value.to("um") / _NOMINAL_UM if unit == "mil" else value.to("mil") * _NOMINAL_UM


def _digits_of(value: Quantity) -> int:
    return min(max(len(value.digits.replace(".", "").lstrip("-0")), _FEWEST_DIGITS), _MOST_DIGITS)
