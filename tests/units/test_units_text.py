"""What an author may write for a quantity, what is refused and how it is said, and how a value is printed.

The cases are tables in `data/`; in `shown.csv` a low line stands for a no-break blank.
"""

from __future__ import annotations

import csv
from decimal import Decimal
from fractions import Fraction
from pathlib import Path

import pytest

from specgen.units.display import show, show_range
from specgen.units.kinds import KINDS
from specgen.units.quantity import Quantity, QuantityError, parse_quantity, parse_range, parse_span
from specgen.units.rounding import round_half_up, significant


def rows(name: str) -> list[list[str]]:
    with (Path(__file__).parent / "data" / f"{name}.csv").open(encoding="utf-8", newline="") as file:
        return list(csv.reader(file))[1:]


@pytest.mark.parametrize(("kind", "text", "number", "unit", "base"), rows("accepted"))
def test_quantity_is_read(kind: str, text: str, number: str, unit: str, base: str) -> None:
    found = parse_quantity(kind, text)
    assert (found.kind, found.number, found.unit, found.base) == (kind, Fraction(number), unit, Fraction(base))
    assert str(found) == text


def test_every_kind_is_read_in_the_table_of_accepted_texts() -> None:
    assert {row[0] for row in rows("accepted")} == set(KINDS)


@pytest.mark.parametrize(("kind", "text", "what", "remedy"), rows("refused"))
def test_text_that_is_no_quantity_is_refused(kind: str, text: str, what: str, remedy: str) -> None:
    with pytest.raises(QuantityError) as refused:
        parse_quantity(kind, text)
    assert (refused.value.what, refused.value.remedy) == (what, remedy)


@pytest.mark.parametrize(("kind", "text", "low", "high", "printed"), rows("ranges"))
def test_range_is_read(kind: str, text: str, low: str, high: str, printed: str) -> None:
    found = parse_range(kind, text)
    assert (str(found.low or ""), str(found.high or ""), str(found)) == (low, high, printed)


@pytest.mark.parametrize(("kind", "text", "what", "remedy"), rows("refused_ranges"))
def test_text_that_is_no_range_is_refused(kind: str, text: str, what: str, remedy: str) -> None:
    with pytest.raises(QuantityError) as refused:
        parse_range(kind, text)
    assert (refused.value.what, refused.value.remedy) == (what, remedy)


@pytest.mark.parametrize(
    ("text", "months"),
    [("24 months", 24), ("1 month", 1), ("2 years", 24), ("1 year", 12), ("9999 months", 9999)],
)
def test_calendar_span_is_read(text: str, months: int) -> None:
    found = parse_span(text)
    assert (found.months, str(found)) == (months, text)


@pytest.mark.parametrize("text", ["24", "0 months", "024 months", "24  months", "2.5 years", "-1 months", "2 weeks"])
def test_text_that_is_no_calendar_span_is_refused(text: str) -> None:
    with pytest.raises(QuantityError) as refused:
        parse_span(text)
    assert refused.value.what == f"{text} is not a number of months or years"
    assert refused.value.remedy == "write it as in 24 months or 2 years"


def test_calendar_spans_are_ordered_by_months_whatever_the_word() -> None:
    assert parse_span("2 years") == parse_span("24 months") > parse_span("23 months")
    assert len({parse_span("2 years"), parse_span("24 months")}) == 1


@pytest.mark.parametrize(("number", "places", "printed"), rows("rounding"))
def test_rounding_is_half_up(number: str, places: str, printed: str) -> None:
    assert str(round_half_up(Fraction(number), int(places))) == printed


@pytest.mark.parametrize(
    ("number", "printed"),
    [("2.3622", "2.36"), ("0.0012345", "0.00123"), ("123456", "123456"), ("-12.35", "-12.4"), ("0", "0")],
)
def test_three_significant_digits_without_an_exponent(number: str, printed: str) -> None:
    assert significant(Fraction(number)) == Decimal(printed)
    assert str(significant(Fraction(number))) == printed


@pytest.mark.parametrize(("kind", "text", "second", "shown"), rows("shown"))
def test_value_is_shown_with_its_second_unit(kind: str, text: str, second: str, shown: str) -> None:
    other = {kind: second} if second else None
    if ".." in text or text.startswith("m"):
        found = show_range(parse_range(kind, text), other)
    else:
        found = show(parse_quantity(kind, text), other)
    assert found == shown.replace("_", "\N{NO-BREAK SPACE}")


def test_computed_quantity_is_shown_to_three_digits() -> None:
    assert show(Quantity.of("thickness", Fraction(1000, 3), "um")) == "333\N{NO-BREAK SPACE}µm"
    assert show(Quantity.of("thickness", Fraction(10, 3), "um")) == "3.33\N{NO-BREAK SPACE}µm"


def test_usual_pot_life_of_mixed_epoxy_and_life_of_an_activated_can() -> None:
    # Common practice, no source: 45 to 90 min at room temperature, and one to two days once the capsule is broken.
    pot_life, activated = parse_range("duration", "45..90 min"), parse_range("duration", "1..2 days")
    held = [pot_life.holds(parse_quantity("duration", text)) for text in ("44 min", "1 h", "2 h")]
    assert held == [False, True, False]
    held = [activated.holds(parse_quantity("duration", text)) for text in ("8 h", "48 h", "49 h")]
    assert held == [False, True, False]
