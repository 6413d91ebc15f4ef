"""Wet film, dry film, thinning, comb, passes and coats against the check values of the trade."""

from __future__ import annotations

from collections.abc import Callable
from decimal import Decimal
from fractions import Fraction

import pytest

from specgen.trade.film import dry_film, film_left, thinned_volume_solids, wet_film
from specgen.trade.passes import (
    coats_for,
    film_of_passes,
    film_per_coat,
    passes_for,
    usual_film_per_pass,
)
from specgen.trade.working import Working, WorkingError
from specgen.units.quantity import Quantity, parse_quantity
from specgen.units.rounding import round_half_up


def um(text: str) -> Quantity:
    return parse_quantity("thickness", f"{text} um")


def percent(text: str) -> Quantity:
    return parse_quantity("share", f"{text} %")


def thinner(text: str) -> Quantity | None:
    return parse_quantity("percentage", f"{text} %") if text else None


def agrees(working: Working, result: str, places: str) -> bool:
    return round_half_up(working.number, int(places)) == Decimal(result)


@pytest.mark.cases("wet_and_dry_film")
def test_wet_and_dry_film(case: dict[str, str]) -> None:
    turn = {"wet": wet_film, "dry": dry_film}[case["asked"]]
    film = parse_quantity("thickness", f"{case['film']} {case['unit']}")
    found = turn("w", film, percent(case["volume_solids"]), thinner(case["thinner"]), case["unit"])
    assert agrees(found, case["result"], case["places"])
    assert found.printed() == f"{case['printed']}\N{NO-BREAK SPACE}{ {'um': 'µm', 'mil': 'mil'}[case['unit']] }"


@pytest.mark.cases("thinned_solids")
def test_thinned_volume_solids(case: dict[str, str]) -> None:
    added = parse_quantity("percentage", f"{case['thinner']} %")
    found = thinned_volume_solids("vs", percent(case["volume_solids"]), added)
    assert agrees(found, case["result"], case["places"])
    assert found.printed() == f"{case['printed']}\N{NO-BREAK SPACE}%"


@pytest.mark.cases("coats")
def test_coats(case: dict[str, str]) -> None:
    most = um(case["most_per_coat"]) if case["most_per_coat"] else None
    sag = um(case["sag_wet"]) if case["sag_wet"] else None
    solids = percent(case["volume_solids"]) if case["volume_solids"] else None
    coats = coats_for("n", um(case["target"]), most, sag, solids)
    assert coats.result == Fraction(case["coats"])
    assert agrees(film_per_coat("p", um(case["target"]), coats), case["per_coat"], "1")


def test_thinner_lowers_what_a_sag_limit_leaves() -> None:
    coats = coats_for("n", um("120"), None, um("150"), percent("26.4"), thinner("10"))
    assert coats.result == 4
    assert coats.substituted() == "rounded up (120 ÷ (150 × 26.4 ÷ (100 + 10)))"


def test_passes() -> None:
    assert film_of_passes("f", um("15"), 4).quantity == um("60")
    assert passes_for("n", um("60"), um("15")).printed() == "4\N{NO-BREAK SPACE}cross coats"
    assert passes_for("n", um("15"), um("15")).printed() == "1\N{NO-BREAK SPACE}cross coat"
    assert passes_for("n", um("60.1"), um("15")).result == 5


def test_usual_film_of_a_cross_coat_comes_from_the_table() -> None:
    low, high = usual_film_per_pass()
    assert (low.value, high.value) == (um("8"), um("20"))
    assert low.origin == "table:film_per_cross_coat"


def test_sanding_takes_film_off_and_may_take_too_much() -> None:
    assert film_left("f", um("60"), [um("5"), um("12.7")]).quantity == um("42.3")
    assert film_left("f", um("10"), [um("12")]).printed() == "−2\N{NO-BREAK SPACE}µm"


@pytest.mark.parametrize(
    ("attempt", "what"),
    [
        (lambda: wet_film("w", um("60"), percent("0")), "wet film thickness cannot be calculated: VS is zero, and the working divides by it"),
        (lambda: passes_for("n", um("60"), um("0")), "number of cross coats cannot be calculated: p is zero, and the working divides by it"),
        (lambda: coats_for("n", um("60")), "neither the maximum DFT per coat nor a sag limit is stated"),
        (
            lambda: coats_for("n", um("60"), None, um("150")),
            "the volume solids that convert the sag limit (WFT) to a DFT are not stated",
        ),
    ],
)  # fmt: skip
def test_what_cannot_be_worked_out_says_why(attempt: Callable[[], object], what: str) -> None:
    with pytest.raises(WorkingError) as refused:
        attempt()
    assert refused.value.what == what
