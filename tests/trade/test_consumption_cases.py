"""Spreading rates, loss, dead volume, litres, cans and claims against the check values of the trade."""

from __future__ import annotations

from decimal import Decimal
from fractions import Fraction

import pytest

from specgen.standards.tables import table
from specgen.trade.cans import area_per_can, cans, empty_time, usual_transfer
from specgen.trade.consumption import (
    Demand,
    litres,
    packs,
    practical_spreading_rate,
    spreading_rate,
    spreading_rate_us,
)
from specgen.trade.dead_volume import DeadVolume, dead_volume
from specgen.trade.film import thinned_volume_solids
from specgen.trade.loss import (
    LossShare,
    Surplus,
    loss_of_transfer,
    mean_transfer,
    share_of_surplus,
)
from specgen.trade.working import WorkingError
from specgen.units.quantity import Quantity, parse_quantity
from specgen.units.rounding import round_half_up

GRID_HEADS = {"volume_solids", "document", "mark"}


def film(text: str, unit: str = "um") -> Quantity:
    return parse_quantity("thickness", f"{text} {unit}")


def percent(text: str) -> Quantity:
    return parse_quantity("share", f"{text} %")


def surplus(text: str) -> Surplus:
    return Surplus(parse_quantity("percentage", f"{text} %"))


def m2(text: str) -> Quantity:
    return parse_quantity("area", f"{text} m2")


def ml(text: str) -> Quantity:
    return parse_quantity("volume", f"{text} mL")


@pytest.mark.cases("spreading_rates")
def test_spreading_rate(case: dict[str, str]) -> None:
    solids: Quantity = percent(case["volume_solids"])
    if case["thinner"]:
        solids = thinned_volume_solids("t", solids, parse_quantity("percentage", f"{case['thinner']} %")).quantity
    if case["system"] == "us":
        found = spreading_rate_us("s", solids, film(case["film"], "mil"))
    else:
        found = spreading_rate("s", solids, film(case["film"]))
    assert round_half_up(found.number, int(case["places"])) == Decimal(case["result"])


@pytest.mark.cases("spreading_grid_metric")
def test_printed_table_of_spreading_rates_in_m2_per_litre_is_rounded_half_up(case: dict[str, str]) -> None:
    depths = [head for head in case if head not in GRID_HEADS]
    rates = [spreading_rate("s", percent(case["volume_solids"]), film(depth)).number for depth in depths]
    assert [str(round_half_up(rate, 1)) for rate in rates] == [case[depth] for depth in depths]


@pytest.mark.cases("spreading_grid_us")
def test_printed_table_of_spreading_rates_in_ft2_per_gallon(case: dict[str, str]) -> None:
    depths = [head for head in case if head not in GRID_HEADS]
    rates = [spreading_rate_us("s", percent(case["volume_solids"]), film(depth, "mil")).number for depth in depths]
    assert [str(round_half_up(rate, 0)) for rate in rates] == [case[depth] for depth in depths]


@pytest.mark.cases("misprints")
def test_known_misprint_of_the_table_is_not_followed(case: dict[str, str]) -> None:
    rate = spreading_rate_us("s", percent(case["volume_solids"]), film(case["film"], "mil"))
    assert str(round_half_up(rate.number, 0)) == case["right"] != case["misprinted"]


def test_factor_of_the_us_table_is_a_rounded_thousand_square_metres_by_a_micrometre_from_a_litre() -> None:
    exact = Quantity.of("spreading_rate", 1000, "m2/L").to("ft2/gal") * Quantity.of("thickness", 1, "um").to("mil")
    assert exact == Fraction(231 * 1000, 144)
    assert round_half_up(exact, 4) == Decimal("1604.1667")
    assert round_half_up(exact, 0) == Decimal(table("spreading_constants").row("system", "US, as printed")["constant"])


def test_square_feet_per_gallon_in_a_square_metre_per_litre() -> None:
    assert round_half_up(Quantity.of("spreading_rate", 1, "m2/L").to("ft2/gal"), 7) == Decimal("40.7458333")


def test_practical_spreading_rate_of_thinned_paint() -> None:
    # The article prints 5.299 because it rounded twice; here nothing is rounded before the end.
    solids = thinned_volume_solids("t", percent("50"), parse_quantity("percentage", "10 %"))
    theoretical = spreading_rate("s", solids, film("60"))
    found = practical_spreading_rate("p", theoretical, LossShare(percent("30")))
    assert round_half_up(found.number, 3) == Decimal("5.303")
    assert abs(found.number - Fraction("5.299")) <= Fraction("0.01")


@pytest.mark.cases("litres")
def test_litres(case: dict[str, str]) -> None:
    area = parse_quantity("area", f"{case['area']} {case['area_unit']}")
    loss = LossShare(percent(case["loss"])) if case["loss"] else None
    found = litres("l", [Demand(area, film(case["film"]))], percent(case["volume_solids"]), loss)
    assert round_half_up(found.number, int(case["places"])) == Decimal(case["result"])


def test_dead_volume_is_one_more_demand_and_counted_once() -> None:
    dead = dead_volume("dv", film("75"), DeadVolume.BY_ROUGHNESS)
    demands = [Demand(m2("500"), film("200")), Demand(m2("500"), dead)]
    found = litres("l", demands, percent("85"), LossShare(percent("40")))
    assert round_half_up(found.number, 3) == Decimal("245.098")


@pytest.mark.parametrize(("given", "share"), [("60", "37.5"), ("100", "50"), ("0", "0")])
def test_surplus_as_a_share(given: str, share: str) -> None:
    found = share_of_surplus("s", surplus(given))
    assert found.quantity == percent(share)


def test_mean_transfer_efficiency_is_weighted_by_solids_and_harmonic() -> None:
    by_air = (parse_quantity("volume", "60 L"), percent("50"), percent("25"))
    electrostatic = (parse_quantity("volume", "40 L"), percent("50"), percent("60"))
    assert round_half_up(mean_transfer("t", [by_air, electrostatic]).number, 2) == Decimal("32.61")


def test_transfer_efficiency_leaves_a_loss() -> None:
    assert loss_of_transfer("l", percent("75")).quantity == percent("25")


def test_usual_figures_come_from_their_tables() -> None:
    assert [given.value for given in usual_transfer("flat panel, trained hand")] == [percent("50"), percent("70")]
    with pytest.raises(KeyError):
        usual_transfer("magic")


@pytest.mark.cases("dead_volume")
def test_dead_volume(case: dict[str, str]) -> None:
    found = dead_volume("dv", film(case["profile"]), DeadVolume[case["convention"]])
    assert found.quantity == film(case["film"])


def test_dead_volume_by_roughness_is_two_thirds_of_it_in_every_row() -> None:
    for row in table("dead_volume_by_roughness").rows:
        assert (
            Fraction(row["dead_volume_um"]) == Fraction(row["litres_per_m2"]) * 1000 == Fraction(row["Rz_um"]) * 2 / 3
        )


def test_profile_beyond_the_bands_is_refused() -> None:
    with pytest.raises(WorkingError) as refused:
        dead_volume("dv", film("300.1"), DeadVolume.BY_BAND)
    assert refused.value.what == "a profile of 300.1 um is outside the table, which ends at 300 um"


@pytest.mark.cases("areas_per_can")
def test_area_per_can(case: dict[str, str]) -> None:
    found = area_per_can(
        "a", ml(case["solids_mL"]), percent(case["delivered"]), percent(case["transfer"]), film(case["film"])
    )
    assert round_half_up(found.number, int(case["places"])) == Decimal(case["area"])


@pytest.mark.parametrize(("solids", "target"), [("62.655", "60"), ("59.581", "50")])
def test_cans_for_a_job(solids: str, target: str) -> None:
    found = cans("c", [Demand(m2("1.2"), film(target))], ml(solids), percent("98"), percent("60"))
    assert found.printed() == "2\N{NO-BREAK SPACE}cans"


def test_cans_are_summed_before_the_one_rounding_up() -> None:
    demand = Demand(m2("0.25"), film("36"))
    one = cans("c", [demand], ml("36"), percent("100"), percent("50"))
    two = cans("c", [demand, demand], ml("36"), percent("100"), percent("50"))
    assert (one.printed(), two.printed()) == ("1\N{NO-BREAK SPACE}can", "1\N{NO-BREAK SPACE}can")


def test_packs_round_up_once() -> None:
    needed = parse_quantity("volume", "10.1 L")
    whole = parse_quantity("volume", "5 L")
    assert packs("p", needed, whole, percent("100")).printed() == "3\N{NO-BREAK SPACE}tins"
    # 5 L of which 96 % come out are 4.8 L
    for volume, tins in (("9.6 L", "2"), ("9.7 L", "3")):
        needed = parse_quantity("volume", volume)
        assert packs("p", needed, whole, percent("96")).printed() == f"{tins}\N{NO-BREAK SPACE}tins"


def test_time_to_empty_a_can() -> None:
    mass, rate = parse_quantity("mass", "358.03 g"), parse_quantity("spray_rate", "0.8 g/s")
    found = empty_time("t", mass, percent("98"), rate)
    assert round_half_up(found.number, 1) == Decimal("438.6")


def test_what_cannot_be_worked_out_says_why() -> None:
    with pytest.raises(WorkingError) as nothing_reaches:
        litres("l", [Demand(m2("1"), film("60"))], percent("50"), LossShare(percent("100")))
    assert nothing_reaches.value.what == (
        "paint required cannot be calculated: 100 − loss is zero, and the working divides by it"
    )
    with pytest.raises(WorkingError) as no_area:
        litres("l", [], percent("50"))
    assert no_area.value.what == "there is no area to coat"
    with pytest.raises(WorkingError) as no_area:
        cans("c", [], ml("36"), percent("98"), percent("60"))
    assert no_area.value.what == "there is no area to coat"
    with pytest.raises(WorkingError) as no_method:
        mean_transfer("t", [])
    assert no_method.value.what == "no application method is stated"
