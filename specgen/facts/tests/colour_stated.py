"""What a colour difference states of how it was measured, and whether it follows from the colours beside it."""

from __future__ import annotations

import re
from collections.abc import Sequence
from fractions import Fraction

from specgen.model.test_report import SpecimenResult
from specgen.model.test_required import AskedTest, Detail
from specgen.model.test_value import Measured, read_lab, read_result
from specgen.standards.tables import table
from specgen.trade.colour import Lab, difference_2000, difference_ab

_LIGHT = frozenset({"fluor_uv", "xenon_iso", "xenon_sae"})
_NEEDED = ("illuminant", "observer", "geometry")
_FORMULA = re.compile(r"dE\*?ab|dE ?00|dE ?CMC|ΔE\*?ab|ΔE ?00|CIEDE2000|CIE ?76|CIELAB|CMC", re.IGNORECASE)
_ILLUMINANT = re.compile(r"\bD ?(?:50|65|75)\b|\billuminant|\bTL84\b", re.IGNORECASE)
_OBSERVER = re.compile(r"\b(?:2|10)[ -]?(?:°|deg\w*)|observer|D ?65/10", re.IGNORECASE)
COLOUR_CHANGE = re.compile(r"\bcolou?r (?:change|differ\w*|shift|drift)|\bdE\b|ΔE", re.IGNORECASE)
"""Words for a colour difference."""
# a figure of one digit before the point, without a unit or another meaning of its own, as 0.7 in "after 600 h of UV 0.7 for an epoxy"
_FIGURE = re.compile(
    r"(?<![\w.,:;/*-])(?:(?P<decimal>\d\.\d+)|(?<=: )(?P<alone>\d))(?![\d.]*\d)"
    r"(?! ?(?:[%°]|deg|(?:k?W|k?J|h|min|s|days?|weeks?|months?|years?|d|"
    r"[mµun]?m|MPa|GU|mils?|inch(?:es)?|N|k?g|L|m2|bar|psi|cycles?|coats?)(?!\w)))"
    r"(?P<unit> ?(?:dE|ΔE))?"
)
_FORMULAS = {"dE00": difference_2000, "dE*ab": difference_ab}


def lacking_in(details: Sequence[Detail]) -> list[str]:
    """Which of illuminant, observer and geometry the details do not state."""
    stated = {detail.id.casefold() for detail in details}
    return [needed for needed in _NEEDED if needed not in stated]


def lacking_in_words(text: str) -> list[str]:
    """Which of formula, illuminant and observer a text does not name."""
    asked = (("the formula", _FORMULA), ("illuminant", _ILLUMINANT), ("observer", _OBSERVER))
    return [name for name, pattern in asked if not pattern.search(text)]


def changes_said(text: str) -> tuple[str, ...]:
    """The figures of the colour differences that a sentence names, as they are written; of those with their unit alone where any has it."""
    if not COLOUR_CHANGE.search(text):
        return ()
    found = [(figure["decimal"] or figure["alone"], figure["unit"]) for figure in _FIGURE.finditer(text)]
    with_unit = [digits for digits, unit in found if unit]
    return tuple(dict.fromkeys(with_unit or [digits for digits, _ in found]))


def after_light(asked: AskedTest) -> bool:
    """True where a test is made after fluorescent UV or xenon light."""
    return asked.after is not None and asked.after.method in _LIGHT


def instruments_differ_by() -> Fraction:
    """How far two readings of one colour lie apart that were taken with instruments of different make: between makes, and from reading
    to reading."""
    limits = table("test_limits")
    return Fraction(limits.row("id", "colour_seen")["value"]) + Fraction(limits.row("id", "colour_again")["value"])


def followed(result: SpecimenResult) -> str | None:
    """The difference that follows from the two colours, where the one stated is not it within its last digit; None where it is."""
    value = read_result(result.value)
    if result.colour_before is None or result.colour_after is None or not isinstance(value, Measured):
        return None
    formula = _FORMULAS.get(value.unit)
    if formula is None:
        return None
    before, after = (
        Lab(*(float(axis) for axis in read_lab(text))) for text in (result.colour_before, result.colour_after)
    )
    difference, places = formula(before, after), len(value.digits.partition(".")[2])
    # half a unit of the last digit, and a little for the rounding of the colours themselves
    if abs(difference - float(value.number)) <= 0.6 * 10**-places:
        return None
    return f"{difference:.{max(places, 1)}f} {value.unit}"
