"""Whether rounding between two units explains that two stated values differ: 80 um and 3.15 mil are one film, told twice.

`comparison.rounding` asks it of a value before and after, the rules (by `rules.between_units`) of two values that have to agree.
No value is changed by it: every comparison stays exact, and only what is said of a difference follows from it.
"""

from __future__ import annotations

from collections.abc import Sequence
from fractions import Fraction

from specgen.units.display import unit_sign
from specgen.units.quantity import Quantity, Range
from specgen.units.rounding import round_half_up

NOMINAL_MIL = Fraction(25)
"""Micrometres that data sheets take for one mil (common practice, no source); exactly it is 25.4."""

_FEWEST_DIGITS = 2


def in_two_units(one: Quantity, other: Quantity) -> bool:
    """True where the two are written in units that do not print alike."""
    return one.kind == other.kind and unit_sign(one.unit) != unit_sign(other.unit)


def rounds_to(value: Quantity, shown: Quantity) -> bool:
    """True where `value`, in the unit of `shown` and to the decimals it was written with, is the figure written there."""
    return _rounded(value.to(shown.unit), shown) == shown.number


def explained_by_rounding(one: Quantity, other: Quantity) -> bool:
    """True where the values differ, stand in two units, and either is what the other gives at the digits shown.

    A figure of one digit has too little to say: 88 um would be 3 mil. Films agree by the nominal mil of data sheets as well.
    A computed value was never written, and nothing rounds to it.
    """
    if one == other or not in_two_units(one, other):
        return False
    if any(_speaks(shown) and rounds_to(value, shown) for value, shown in ((one, other), (other, one))):
        return True
    return one.kind == "thickness" and _by_nominal_mil(one, other)


def sum_explained(total: Quantity, terms: Sequence[Quantity]) -> bool:
    """True where a stated total of films differs from the sum of its terms by what rounding each of them to its digits can do.

    Asked only of figures in two units: each may be off by half its last digit, one in whole mils by the nominal mil.
    """
    written = (total, *terms)
    if len({unit_sign(value.unit) for value in written}) == 1:
        return False
    apart = abs(total.to("um") - sum((term.to("um") for term in terms), Fraction(0)))
    return apart <= sum((_half_a_digit(value) for value in written), Fraction(0))


def _half_a_digit(film: Quantity) -> Fraction:
    decimals = len(film.digits.partition(".")[2])
    exact = film.to("um")
    if unit_sign(film.unit) == "mil" and not decimals:
        return exact - film.number * NOMINAL_MIL
    return exact / film.number / 2 / 10**decimals if film.number else Fraction(0)


def range_explained(allowed: Range, asked: Range) -> bool:
    """True where `asked` goes beyond `allowed`, and at every end at which it does rounding explains it; an open end goes beyond none."""
    beyond = [
        (limit, bound)
        for limit, bound, inside in (
            (asked.low, allowed.low, asked.low is not None and allowed.low is not None and allowed.low <= asked.low),
            (
                asked.high,
                allowed.high,
                asked.high is not None and allowed.high is not None and asked.high <= allowed.high,
            ),
        )
        if limit is not None and bound is not None and not inside
    ]
    return bool(beyond) and all(explained_by_rounding(limit, bound) for limit, bound in beyond)


def _by_nominal_mil(one: Quantity, other: Quantity) -> bool:
    mils = [value for value in (one, other) if unit_sign(value.unit) == "mil"]
    metric = [value for value in (one, other) if value not in mils]
    if len(mils) != 1 or len(metric) != 1:
        return False
    nominal = mils[0].number * NOMINAL_MIL
    return metric[0].to("um") == nominal or (
        _speaks(mils[0]) and _rounded(metric[0].to("um") / NOMINAL_MIL, mils[0]) == mils[0].number
    )


def _rounded(number: Fraction, shown: Quantity) -> Fraction:
    return Fraction(round_half_up(number, len(shown.digits.partition(".")[2])))


def _speaks(shown: Quantity) -> bool:
    return len(shown.digits.replace(".", "").lstrip("-0")) >= _FEWEST_DIGITS
