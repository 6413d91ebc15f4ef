"""Two values of one kind in other units that a text gives for one amount, where they cannot be one: 5 MPa (500 psi)."""

from __future__ import annotations

import re
from collections.abc import Iterator
from fractions import Fraction

from specgen.units.kinds import KINDS, SPELLINGS, UNITS
from specgen.units.quantity import Quantity

_KINDS = (
    "pressure",
    "temperature",
    "impact",
    "thickness",
    "length",
    "mass",
    "volume",
    "area",
    "density",
    "spreading_rate",
)
_SPELT = "|".join(
    re.escape(unit) for unit in sorted({unit for kind in _KINDS for unit in KINDS[kind].units}, key=len, reverse=True)
)
_VALUE = rf"(-?\d{{1,9}}(?:\.\d{{1,6}})?)[ -]?({_SPELT})"
_PAIR = re.compile(rf"(?<![\w.,/]){_VALUE} ?(?:\(|/ ?|= ?){_VALUE}(?![\w²³/])")


def pairs_said(text: str) -> Iterator[tuple[str, str]]:
    """Each pair that does not agree, as written."""
    for found in _PAIR.finditer(text):
        for kind in _KINDS:
            units = KINDS[kind].units
            if found[2] in units and found[4] in units:
                if _plain(found[2]) != _plain(found[4]) and not _one_amount(kind, found):
                    yield f"{found[1]} {found[2]}", f"{found[3]} {found[4]}"
                break


def _plain(unit: str) -> str:
    return UNITS[SPELLINGS.get(unit, unit)].meaning


def _one_amount(kind: str, found: re.Match[str]) -> bool:
    first, second = (_ends(kind, found[number], found[unit]) for number, unit in ((1, 2), (3, 4)))
    return first[0] <= second[1] and second[0] <= first[1]


def _ends(kind: str, digits: str, unit: str) -> tuple[Fraction, Fraction]:
    """What the number may stand for: half a unit of its last digit either way; a round number is as often rounded to its last ten."""
    places = len(digits.partition(".")[2])
    half = Fraction(1, 2 * 10**places)
    if not places and digits.endswith("0") and len(digits) > 1:
        half *= 10
    low, high = (Quantity.of(kind, Fraction(digits) + side * half, unit).base for side in (-1, 1))
    return low, high
