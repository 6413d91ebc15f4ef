"""Volume solids and can contents against the check values of the trade."""

from __future__ import annotations

from decimal import Decimal

import pytest

from specgen.trade.solids import (
    Component,
    mixed_volume_solids,
    mixture_density,
    net_mass,
    propellant_free_volume_solids,
    solids_from_mass,
    solids_from_volume,
    volume_solids,
)
from specgen.trade.working import Working, WorkingError
from specgen.units.quantity import Quantity, parse_quantity
from specgen.units.rounding import round_half_up


def percent(text: str) -> Quantity:
    return parse_quantity("share", f"{text} %")


def density(text: str) -> Quantity:
    return parse_quantity("density", f"{text} g/mL")


def contents(case: dict[str, str]) -> list[Component]:
    return [
        Component("solids", percent(case["w_nv"]), density(case["rho_nv"]), "solids"),
        Component("solvent", percent(case["w_solvent"]), density(case["rho_solvent"]), "solvent"),
        Component("propellant", percent(case["w_propellant"]), density(case["rho_propellant"]), "propellant"),
    ]


def agrees(working: Working, text: str) -> bool:
    return round_half_up(working.number, -int(Decimal(text).as_tuple().exponent)) == Decimal(text)


@pytest.mark.cases("can_contents")
def test_can_contents(case: dict[str, str]) -> None:
    components = contents(case)
    mixed = mixture_density("d", components)
    assert agrees(mixed, case["density"])
    net = parse_quantity("volume", f"{case['net_mL']} mL")
    mass = net_mass("m", net, mixed)
    assert agrees(mass, case["net_g"])
    in_can = volume_solids("vs", components)
    assert agrees(in_can, case["solids_by_can"])
    by_volume = solids_from_volume("v", net, in_can)
    assert agrees(by_volume, case["solids_mL"])
    assert solids_from_mass("w", mass, percent(case["w_nv"]), density(case["rho_nv"])).number == by_volume.number
    free = propellant_free_volume_solids("f", components)
    assert agrees(free, case["solids_free"])


def test_mix_by_volume() -> None:
    found = mixed_volume_solids("m", [(4, percent("60")), (1, percent("40"))])
    assert found.quantity == percent("56")


def test_shares_that_do_not_add_up_are_refused() -> None:
    short = [
        Component("solids", percent("30"), density("1.5"), "solids"),
        Component("water", percent("60"), density("1"), "solvent"),
    ]
    for attempt in (volume_solids, mixture_density, propellant_free_volume_solids):
        with pytest.raises(WorkingError) as refused:
            attempt("x", short)
        assert refused.value.what == "the shares by mass add up to 90 %, not to 100 %"


def test_composition_without_solids_is_refused() -> None:
    solvent = [Component("water", percent("100"), density("1"), "solvent")]
    with pytest.raises(WorkingError) as no_solids:
        volume_solids("x", solvent)
    assert no_solids.value.what == "the composition names no solids"
