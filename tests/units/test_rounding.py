"""Numbers are rounded half up once and written exactly, without a float in between."""

from __future__ import annotations

from fractions import Fraction

import pytest

from specgen.units.quantity import Quantity, QuantityError, parse_quantity
from specgen.units.rounding import no_finer, plain_text, round_half_up, significant


@pytest.mark.parametrize(
    ("number", "text"),
    [
        ("999999999999.1234567", "999999999999.1234567"),
        ("0.000000001", "0.000000001"),
        ("-2.50", "-2.5"),
        ("12", "12"),
        ("0", "0"),
    ],
)
def test_a_decimal_is_written_in_full(number: str, text: str) -> None:
    assert plain_text(Fraction(number)) == text


def test_an_endless_fraction_ends_after_six_digits() -> None:
    assert plain_text(Fraction(2, 3)) == "0.666667"


@pytest.mark.parametrize(
    ("number", "digits", "text"),
    [("99.95", 3, "100"), ("2.3622", 3, "2.36"), ("123456", 3, "123456"), ("0.00000012345", 3, "0.000000123"), ("0", 3, "0")],
)  # fmt: skip
def test_significant_digits(number: str, digits: int, text: str) -> None:
    assert f"{significant(Fraction(number), digits):f}" == text


@pytest.mark.parametrize(
    ("number", "places", "text"),
    [("9671.2", 0, "9670"), ("9675", 0, "9680"), ("142.238", 2, "142"), ("4.2364", 2, "4.24"), ("99.996", 2, "100"), ("0.044", 2, "0.04"), ("0", 2, "0.00")],
)  # fmt: skip
def test_a_measured_result_has_no_more_digits_than_it_carries(number: str, places: int, text: str) -> None:
    assert f"{no_finer(Fraction(number), places, 3):f}" == text


@pytest.mark.parametrize(("number", "places", "text"), [("1.25", 1, "1.3"), ("-1.25", 1, "-1.3"), ("2.25", 1, "2.3"), ("0.04", 1, "0.0"), ("-0.04", 1, "0.0")])  # fmt: skip
def test_half_up(number: str, places: int, text: str) -> None:
    assert str(round_half_up(Fraction(number), places)) == text


def test_a_computed_quantity_prints_its_number_exactly() -> None:
    assert str(Quantity.of("thickness", Fraction(1, 8), "um")) == "0.125 um"


def test_article_before_a_kind() -> None:
    with pytest.raises(QuantityError, match="^soon is not an area$"):
        parse_quantity("area", "soon")
