"""VOC by its several forms, reactivity, and their limits by jurisdiction and day."""

from __future__ import annotations

import csv
from datetime import date
from fractions import Fraction
from pathlib import Path
from typing import Literal

import pytest

from specgen.standards.citations import Basis
from specgen.standards.tables import table
from specgen.trade.emissions import (
    Part,
    voc_eu,
    voc_multistage,
    voc_released,
    voc_released_by_volume,
    voc_us,
    voc_us_actual,
)
from specgen.trade.known import NotKnown
from specgen.trade.reactivity import Reactant, weighted_reactivity
from specgen.trade.voc_limit import VocLimit, lowest_limit, reactivity_limit, voc_limit_eu, voc_limit_us_refinish
from specgen.trade.working import Working, WorkingError
from specgen.units.quantity import Quantity, parse_quantity
from specgen.units.rounding import round_half_up

GAP = "\N{NO-BREAK SPACE}"

with (Path(__file__).parent / "data" / "can_of_the_example.csv").open(encoding="utf-8", newline="") as file:
    CAN = list(csv.DictReader(file))


def percent(text: str) -> Quantity:
    return Quantity.of("share", Fraction(text), "%")


def density(text: str) -> Quantity:
    return parse_quantity("density", f"{text} g/mL")


def contents() -> list[Part]:
    counts: dict[str, Literal["voc", "exempt", "water", "solids"]] = {"acetone": "exempt", "solids": "solids"}
    return [
        Part(
            row["id"],
            percent(row["share"]),
            counts.get(row["id"], "voc"),
            density("0.79") if row["id"] == "acetone" else None,
        )
        for row in CAN
    ]


def reactants() -> list[Reactant]:
    return [Reactant(row["id"], percent(row["share"]), row["cas"], counts=row["id"] != "solids") for row in CAN]


WATERY = [
    Part("water", percent("40"), "water", density("1")),
    Part("glycol ether", percent("10"), "voc"),
    Part("solids", percent("50"), "solids"),
]


def test_worked_example_in_its_three_forms() -> None:
    assert voc_eu("v", contents(), density("0.78")).printed() == f"624{GAP}g/L"
    regulatory = voc_us("v", contents(), density("0.78"))
    assert round_half_up(regulatory.number, 1) == round_half_up(Fraction("597.4"), 1)
    actual = voc_us_actual("v", contents(), density("0.78"))
    assert actual.number == Fraction("514.8")
    assert (regulatory.source.basis, actual.source.basis) == (Basis.MEMORY, Basis.MEMORY)
    assert voc_eu("v", contents(), density("0.78")).source.basis is Basis.REGULATION


def test_water_is_taken_out_of_the_litre_except_for_preparatory_products() -> None:
    assert voc_eu("v", WATERY, density("1.25")).number == 1250 * Fraction("0.1") / (1 - Fraction("0.5"))
    assert voc_eu("v", WATERY, density("1.25"), water_subtracted=False).number == 125
    assert voc_us("v", WATERY, density("1.25")).number == 250
    assert voc_eu("v", WATERY, density("1.25")).formula_text() == ("1000 × ρ × w₂ ÷ 100 ÷ (1 − ρ × w₁ ÷ ρ₁ ÷ 100)")


def test_what_reacts_into_the_film_is_not_counted() -> None:
    parts = [
        Part("styrene", percent("30"), "voc", into_film=True),
        Part("ketone", percent("20"), "voc"),
        Part("solids", percent("50"), "solids"),
    ]
    assert voc_eu("v", parts, density("1")).number == 200


def test_what_is_missing_or_impossible_is_refused() -> None:
    bare = [Part("water", percent("40"), "water"), Part("ether", percent("60"), "voc")]
    with pytest.raises(WorkingError) as missing:
        voc_eu("v", bare, density("1"))
    assert missing.value.what == "the density of water is not stated"
    full = [Part("water", percent("95"), "water", density("1")), Part("ether", percent("5"), "voc")]
    with pytest.raises(WorkingError) as beyond:
        voc_eu("v", full, density("1.2"))
    assert (
        beyond.value.what
        == "water and exempt solvents exceed one litre: the figures of VOC content, EU, less water do not fit"
    )
    with pytest.raises(WorkingError) as nothing:
        voc_eu("v", [Part("solids", percent("100"), "solids")], density("1"))
    assert nothing.value.what == "the composition names no VOC"


def test_multistage() -> None:
    def voc(text: str) -> Quantity:
        return parse_quantity("voc_content", f"{text} g/L")

    assert voc_multistage("m", voc("600"), [], voc("420")).number == 480
    assert voc_multistage("m", voc("600"), [voc("500")], voc("420")).number == 485


def test_mass_let_off_on_a_job() -> None:
    mass = parse_quantity("mass", "624 g")
    assert voc_released("r", mass, contents(), exempt_counts=True).number == Fraction("499.2")
    assert voc_released("r", mass, contents(), exempt_counts=False).number == Fraction("411.84")
    by_volume = voc_released_by_volume(
        "r", parse_quantity("volume", "0.8 L"), voc_us_actual("v", contents(), density("0.78"))
    )
    assert by_volume.number == Fraction("411.84")


def test_worked_example_of_reactivity() -> None:
    found = weighted_reactivity("p", reactants())
    assert isinstance(found, Working)
    assert found.number == Fraction("1.0484") == sum(Fraction(row["mir_term"]) for row in CAN if row["mir_term"])
    assert found.printed() == f"1.05{GAP}g O₃/g"
    assert found.source.basis is Basis.PUBLISHED
    older = weighted_reactivity("p", reactants(), "2008")
    assert isinstance(older, Working)
    assert (older.number, older.source.basis) == (Fraction("1.0944"), Basis.MEMORY)


def test_factors_of_the_example_stand_in_the_table() -> None:
    listed = {row["cas"]: row["mir"] for row in table("reactivity_factors").rows}
    assert {row["cas"]: row["mir"] for row in CAN if row["cas"]} == {
        row["cas"]: listed[row["cas"]] for row in CAN if row["cas"]
    }


def test_what_counts_nothing_and_what_is_not_known() -> None:
    trace = [Reactant("toluene", percent("0.09"), "108-88-3"), Reactant("solids", percent("99.91"), counts=False)]
    found = weighted_reactivity("p", trace)
    assert isinstance(found, Working)
    assert found.number == 0
    negative = weighted_reactivity("p", [Reactant("TDI", percent("1"), "584-84-9")])
    assert isinstance(negative, Working)
    assert negative.number == 0
    assert weighted_reactivity("p", [Reactant("naphtha", percent("5"))]) == NotKnown(
        "reactivity", "the set of 2010 does not hold every factor", ("reactivity factor of naphtha",)
    )
    binned = weighted_reactivity("p", [Reactant("naphtha", percent("50"), factor=Fraction("1.57"))])
    assert isinstance(binned, Working)
    assert binned.number == Fraction("0.785")


@pytest.mark.cases("voc_limits")
def test_limit_by_category_and_day(case: dict[str, str]) -> None:
    on = date.fromisoformat(case["on"])
    found: VocLimit | NotKnown
    if case["which"] == "EU":
        found = voc_limit_eu(case["category"], on)
    elif case["which"] == "US refinish":
        found = voc_limit_us_refinish(case["category"])
    else:
        found = reactivity_limit("US-CA" if case["which"] == "US-CA" else "US", case["category"], on)
    if not case["limit"]:
        assert isinstance(found, NotKnown)
        return
    assert isinstance(found, VocLimit)
    number = found.limit.number if isinstance(found.limit, Quantity) else found.limit
    assert (number, found.unit) == (Fraction(case["limit"]), case["unit"])
    assert found.source.basis is (Basis.MEMORY if case["mark"] == "MEMORY" else Basis.REGULATION)


def test_the_lowest_limit_holds_where_several_uses_are_claimed() -> None:
    day = date(2026, 1, 1)
    two, clear = (reactivity_limit("US-CA", name, day) for name in ("two_component_coating", "clear_coatings"))
    assert lowest_limit([two, clear]) == clear
    unread = reactivity_limit("US-CA", "wood_stain", day)
    assert lowest_limit([two, unread]) == unread


def test_worked_example_against_its_limits() -> None:
    aerosol = voc_limit_eu("e", date(2026, 1, 1))
    topcoat = voc_limit_eu("d", date(2026, 1, 1))
    assert isinstance(aerosol, VocLimit)
    assert isinstance(topcoat, VocLimit)
    assert isinstance(aerosol.limit, Quantity)
    assert isinstance(topcoat.limit, Quantity)
    own = voc_eu("v", contents(), density("0.78")).quantity
    assert topcoat.limit < own <= aerosol.limit


def test_limits_of_california_follow_each_other_without_a_gap() -> None:
    rows = [row for row in table("reactivity_limits_california").rows if row["limit"]]
    for older in (row for row in rows if row["until"]):
        (newer,) = [row for row in rows if row["id"] == older["id"] and not row["until"]]
        gap = date.fromisoformat(newer["from"]) - date.fromisoformat(older["until"])
        assert gap.days == 1
        assert Fraction(newer["limit"]) <= Fraction(older["limit"])


COUNTS = {
    "voc_limits_eu": 7,
    "voc_limits_us_refinish": 7,
    "voc_limits_us_refinish_metric": 7,
    "reactivity_limits_us": 36,
    "reactivity_factors": 98,
    "reactivity_bins_aliphatic": 20,
    "reactivity_bins_aromatic": 4,
    "voc_exempt_us": 11,
}


@pytest.mark.parametrize(("name", "count"), COUNTS.items())
def test_table_is_whole(name: str, count: int) -> None:
    assert len(table(name).rows) == count
