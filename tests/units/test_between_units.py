"""A difference that rounding between units explains: `specgen.units.between_units`."""

from __future__ import annotations

from fractions import Fraction

import pytest

from specgen.units.between_units import explained_by_rounding, range_explained
from specgen.units.quantity import Quantity, parse_quantity, parse_range


@pytest.mark.parametrize(
    ("kind", "one", "other", "explained"),
    [
        ("thickness", "80 um", "3.15 mil", True),
        ("thickness", "80 um", "3.1 mil", True),
        ("thickness", "76 um", "3 mil", True),  # 76.2 um
        ("thickness", "75 um", "3 mil", True),  # by the nominal mil
        ("thickness", "60 um", "2.4 mil", True),
        ("thickness", "0.08 mm", "3.15 mil", True),
        ("thickness", "88 um", "3 mil", False),  # one digit says too little
        ("thickness", "80 um", "3 mil", False),
        ("thickness", "30 um", "1 mil", False),
        ("thickness", "80 um", "3.3 mil", False),
        ("thickness", "80 um", "82 um", False),  # one unit: a difference is a difference
        ("thickness", "80 um", "80 microns", False),
        ("thickness", "25.4 um", "1 mil", False),  # they do not differ
        ("temperature", "27 degC", "80 degF", True),
        ("temperature", "15 degC", "60 degF", False),
        ("area", "0.93 m2", "10 ft2", True),
        ("area", "0.8 m2", "10 ft2", False),
    ],
)
def test_what_rounding_explains(kind: str, one: str, other: str, explained: bool) -> None:
    first, second = parse_quantity(kind, one), parse_quantity(kind, other)
    assert explained_by_rounding(first, second) is explained
    assert explained_by_rounding(second, first) is explained


def test_nothing_rounds_to_a_computed_value() -> None:
    computed = Quantity.of("thickness", Fraction(315, 100), "mil")
    assert not explained_by_rounding(parse_quantity("thickness", "79.9 um"), computed)
    assert explained_by_rounding(parse_quantity("thickness", "80 um"), computed)  # but it does to 80 um


@pytest.mark.parametrize(
    ("allowed", "asked", "explained"),
    [
        ("60..80 degF", "16..27 degC", True),  # 26.7 degC
        ("60..80 degF", "15..27 degC", False),
        ("60..80 degF", "16..26 degC", False),  # inside: nothing to explain
        ("max 80 degF", "max 27 degC", True),
        ("max 80 degF", "min 10 degC", False),  # open where the other is not
    ],
)
def test_a_range_is_explained_at_every_end(allowed: str, asked: str, explained: bool) -> None:
    assert range_explained(parse_range("temperature", allowed), parse_range("temperature", asked)) is explained
