"""Heat of combustion and category of an aerosol, with the untested default and what cannot be judged."""

from __future__ import annotations

import csv
from fractions import Fraction
from pathlib import Path

import pytest

from specgen.standards.citations import Basis
from specgen.standards.tables import table
from specgen.trade.aerosol import SprayTest, aerosol_category
from specgen.trade.combustion import Content, content_of, flammable_share, heat_of_combustion
from specgen.trade.judged import Classified
from specgen.trade.known import NotKnown
from specgen.trade.working import WorkingError
from specgen.units.quantity import Quantity, parse_quantity
from specgen.units.rounding import round_half_up

GAP = "\N{NO-BREAK SPACE}"

with (Path(__file__).parent / "data" / "can_of_the_example.csv").open(encoding="utf-8", newline="") as file:
    CAN = list(csv.DictReader(file))


def percent(text: str | Fraction) -> Quantity:
    return Quantity.of("share", Fraction(text), "%")


def heat(text: str) -> Quantity:
    return parse_quantity("heat", f"{text} kJ/g")


def can(*, with_solids: bool = True) -> list[Content]:
    found = [Content(row["id"], percent(row["share"]), row["id"] != "solids", heat(row["net_heat"])) for row in CAN]
    return found if with_solids else [*found[:-1], Content("solids", percent("20"), False)]


def test_worked_example_of_the_heat() -> None:
    theoretical = heat_of_combustion("h", can(), Fraction(1))
    assert theoretical.printed() == f"30.16{GAP}kJ/g"
    effective = heat_of_combustion("h", can())
    assert effective.printed() == f"28.66{GAP}kJ/g"
    assert effective.number == theoretical.number * Fraction(95, 100)
    assert heat_of_combustion("h", can(with_solids=False)).printed() == f"23.91{GAP}kJ/g"
    assert flammable_share("f", can()).printed() == f"80.0{GAP}%"


def test_worked_example_is_category_1_without_a_test() -> None:
    found = aerosol_category("a", can())
    assert isinstance(found, Classified)
    assert (found.hazard_class, found.category) == ("aerosols", "1")
    assert found.why == "more than 1 % of the contents are flammable components and no flammability test is stated"
    assert [working.id for working in found.workings] == ["a.flammable", "a.heat"]
    assert (found.source.document, found.source.basis) == ("CLP", Basis.REGULATION)


def test_a_heat_from_a_test_is_taken_as_it_stands() -> None:
    contents = [
        Content("gas", percent("40"), True, heat("10"), tested=True),
        Content("oil", percent("60"), True, heat("20")),
    ]
    found = heat_of_combustion("h", contents)
    assert found.formula == "(w_1 * H_1 + e * w_2 * H_2) / 100"
    assert found.number == Fraction("15.4")


@pytest.mark.cases("aerosol_categories")
def test_category(case: dict[str, str]) -> None:
    share = Fraction(case["flammable"])
    # The whole heat is given to the part that does not burn, so that share and heat can be set apart.
    rest = Content(
        "rest",
        percent(100 - share),
        False,
        Quantity.of("heat", Fraction(case["heat"]) * 100 / (100 - share), "kJ/g"),
        tested=True,
    )
    contents = [Content("gas", percent(share), True, heat("0"), tested=True), rest]
    test = None
    if case["ignition"]:
        reached = None if case["ignition"] == "none" else parse_quantity("length", case["ignition"])
        test = SprayTest(
            reached,
            Fraction(case["time"]) if case["time"] else None,
            Fraction(case["density"]) if case["density"] else None,
        )
    found = aerosol_category("a", contents, test)
    if case["category"]:
        assert isinstance(found, Classified), found
        assert found.category == case["category"]
    else:
        assert isinstance(found, NotKnown)
        assert found.why
    if case["clause"]:
        assert found.source is not None
        assert found.source.clause == case["clause"]


def test_an_unknown_component_matters_only_where_it_could_change_the_category() -> None:
    burning = [Content("dimethyl ether", percent("40"), True, heat("28.8")), Content("additive", percent("60"))]
    found = aerosol_category("a", burning)
    assert isinstance(found, Classified)
    assert found.category == "1"
    assert [working.id for working in found.workings] == ["a.flammable", "a.flammable_at_most", "a.heat"]

    quiet = [Content("nitrogen", percent("40"), False, heat("0")), Content("additive", percent("60"))]
    unknown = aerosol_category("a", quiet)
    assert isinstance(unknown, NotKnown)
    assert unknown.missing == ("whether additive is flammable", "heat of combustion of additive")


def test_a_step_known_only_from_memory_judges_nothing() -> None:
    found = aerosol_category("a", can(), SprayTest(None))
    assert isinstance(found, NotKnown)
    assert found.source is not None
    assert found.source.basis is Basis.MEMORY
    assert found.why.endswith("that would be category 2, but the step is not verified against the published text")


def test_shares_that_do_not_add_up_cannot_be_judged() -> None:
    short = [Content("dimethyl ether", percent("40"), True, heat("28.8"))]
    found = aerosol_category("a", short)
    assert found == NotKnown(
        "aerosol category", "the shares by mass add up to 40 %, not to 100 %", ("the complete composition by mass",)
    )
    with pytest.raises(WorkingError) as refused:
        flammable_share("f", short)
    assert refused.value.what == "the shares by mass add up to 40 %, not to 100 %"


BURNS = {
    "74-98-6": True,  # gas with a lower limit
    "115-10-6": True,
    "67-64-1": True,  # flash point -20 degC
    "111-76-2": True,  # 61 degC
    "822-06-0": False,  # 140 degC
    "107-98-2": True,  # 36.1 degC
    "616-38-6": None,  # no flash point in the table
    "75-37-6": None,  # gas without a lower limit in the table
    "000-00-0": None,  # not in the table
}


@pytest.mark.parametrize(("cas", "burns"), BURNS.items())
def test_flammability_from_the_table(cas: str, burns: bool | None) -> None:
    assert content_of("it", cas, percent("1")).flammable is burns


def test_a_heat_that_does_not_serve_for_classification_stays_unknown() -> None:
    assert content_of("HFC-152a", "75-37-6", percent("1")).heat is None
    assert content_of("PCBTF", "98-56-6", percent("1")).heat is None
    assert content_of("acetone", "67-64-1", percent("1")).heat is not None


def test_heats_of_the_table_agree_with_those_of_the_example() -> None:
    listed = {row["cas"]: row for row in table("heat_of_combustion").rows}
    for row in CAN[:-1]:
        assert round_half_up(Fraction(listed[row["cas"]]["net_heat"]), 1) == round_half_up(Fraction(row["net_heat"]), 1)
    assert table("heat_of_combustion").row_citation(listed["67-64-1"]).basis is Basis.ARITHMETIC
    assert table("chemical_heats").basis is Basis.MEMORY


MASSES = {"C": "12.011", "H": "1.008", "O": "15.999", "N": "14.007", "F": "18.998", "Cl": "35.45"}


def test_molar_masses_follow_from_the_formulas() -> None:
    masses = {row["cas"]: row["molar_mass"] for row in table("physical_data").rows}
    for row in table("heat_of_combustion").rows:
        number, whole, formula = "", Fraction(0), row["formula"]
        symbols: list[tuple[str, str]] = []
        for sign in formula:
            if sign.isdigit():
                number += sign
            elif sign.islower():
                symbols[-1] = (symbols[-1][0] + sign, "")
            else:
                if symbols:
                    symbols[-1] = (symbols[-1][0], number)
                symbols.append((sign, ""))
                number = ""
        symbols[-1] = (symbols[-1][0], number)
        whole = sum((Fraction(MASSES[symbol]) * int(count or 1) for symbol, count in symbols), Fraction(0))
        assert abs(whole - Fraction(masses[row["cas"]])) <= Fraction(1, 200), row["name"]
