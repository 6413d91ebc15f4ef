"""Rounding and writing of exact numbers. Rounding happens when a figure is printed and nowhere earlier, once, half up:
1.25 prints as 1.3, as printed tables of the trade do.

Called by `display`, by `trade.working` and by the canonical form. No number passes through a float here.
"""

from __future__ import annotations

from decimal import Decimal
from fractions import Fraction

# What no decimal can write to its end is written to this many digits after the point.
_ENDLESS_PLACES = 6
_ALL_PLACES = 30


def round_half_up(number: Fraction, places: int) -> Decimal:
    """`number` to `places` digits after the point, half away from zero."""
    # Exact quotient of integers, so that 1.25 is never 1.2499999 before it is rounded.
    above, below = number.numerator * 10**places, number.denominator
    whole = (abs(above) * 2 + below) // (2 * below)
    return Decimal(f"{'-' if above < 0 and whole else ''}{whole}E{-places}")


def significant(number: Fraction, digits: int = 3) -> Decimal:
    """`number` to `digits` significant digits; whole numbers keep all of theirs."""
    if number == 0:
        return Decimal(0)
    places = max(digits - 1 - _exponent(abs(number)), 0)
    rounded = round_half_up(number, places)
    if places and _exponent(abs(Fraction(rounded))) > _exponent(abs(number)):
        # 99.95 has become 100.0: one digit more than asked for
        return round_half_up(number, places - 1)
    return rounded


def no_finer(number: Fraction, places: int, digits: int) -> Decimal:
    """`number` to `places` digits after the point, and to at most so many significant digits: 9671 is 9670 with three."""
    rounded = round_half_up(number, places)
    surplus = _exponent(abs(Fraction(rounded))) + 1 + places - digits if rounded else 0
    if surplus <= 0:
        return rounded
    if places >= surplus:
        return round_half_up(number, places - surplus)
    step = 10 ** (surplus - places)
    return round_half_up(Fraction(round_half_up(number / step, 0)) * step, 0)


def plain_text(number: Fraction) -> str:
    """`number` in full where it is a decimal with an end, else to six digits after the point; never with an exponent."""
    if number.denominator == 1:
        return str(number.numerator)
    places = next((p for p in range(_ALL_PLACES + 1) if 10**p % number.denominator == 0), _ENDLESS_PLACES)
    return f"{round_half_up(number, places):f}".rstrip("0").rstrip(".")


def _exponent(number: Fraction) -> int:
    exponent = 0
    while number >= 10:
        number, exponent = number / 10, exponent + 1
    while number < 1:
        number, exponent = number * 10, exponent - 1
    return exponent
