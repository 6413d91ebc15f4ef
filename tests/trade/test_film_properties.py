"""What must hold for every film, mixture, can and coat, whatever the figures.

P numbers follow the project's reference list.
"""

from __future__ import annotations

import math
from collections.abc import Callable
from fractions import Fraction

from hypothesis import given, settings
from hypothesis import strategies as st

from specgen.trade.cans import area_per_can, cans
from specgen.trade.consumption import (
    Demand,
    litres,
    practical_spreading_rate,
    spreading_rate,
    spreading_rate_us,
)
from specgen.trade.dead_volume import DeadVolume, dead_volume
from specgen.trade.film import dry_film, thinned_volume_solids, wet_film
from specgen.trade.loss import (
    LossShare,
    Surplus,
    mean_transfer,
    share_of_surplus,
)
from specgen.trade.passes import coats_for
from specgen.trade.solids import (
    Component,
    propellant_free_volume_solids,
    solids_from_mass,
    volume_solids,
)
from specgen.units.quantity import Quantity

# Exact fractions take their time; a slow machine is no fault of the trade.
QUICK = settings(max_examples=60, deadline=None)


def amounts(kind: str, unit: str, lowest: int, highest: int, step: int = 10) -> st.SearchStrategy[Quantity]:
    """Exact quantities from `lowest` to `highest`, in steps of one over `step`."""
    return st.integers(lowest * step, highest * step).map(lambda n: Quantity.of(kind, Fraction(n, step), unit))


FILM = amounts("thickness", "um", 1, 2000)
SOLIDS = amounts("share", "%", 1, 100)
THINNER = amounts("percentage", "%", 0, 100)
PART = amounts("share", "%", 1, 99)
LOSS = amounts("share", "%", 0, 99)
AREA = amounts("area", "m2", 1, 500)
DENSITY = amounts("density", "g/mL", 1, 8, 100)
CAN = amounts("volume", "mL", 5, 200)
SURPLUS = amounts("percentage", "%", 0, 300)


def percent(number: Fraction | int) -> Quantity:
    return Quantity.of("share", number, "%")


def um(number: Fraction | int) -> Quantity:
    return Quantity.of("thickness", number, "um")


@st.composite
def contents(draw: Callable[[st.SearchStrategy[object]], object], propellant: bool = True) -> list[Component]:
    """A can's contents: solids, a solvent and, if asked for, a propellant, adding up to 100 %."""
    nv, solvent = draw(st.integers(1, 49)), draw(st.integers(1, 50))
    assert isinstance(nv, int)
    assert isinstance(solvent, int)
    shares = [nv, solvent, 100 - nv - solvent] if propellant else [nv, 100 - nv]
    densities = [draw(DENSITY) for _ in shares]
    roles = ("solids", "solvent", "propellant")
    return [
        Component(role, percent(share), density, role)  # type: ignore[arg-type]  # drawn from the literals above
        for role, share, density in zip(roles, shares, densities, strict=False)
    ]


def densities(components: list[Component]) -> list[Fraction]:
    return [entry.density.base for entry in components if isinstance(entry.density, Quantity)]


def shares(components: list[Component]) -> list[Fraction]:
    return [entry.share.base for entry in components if isinstance(entry.share, Quantity)]


@QUICK
@given(FILM, SOLIDS, THINNER)
def test_p01_dry_of_wet_is_the_film_again(film: Quantity, solids: Quantity, thinner: Quantity) -> None:
    assert dry_film("d", wet_film("w", film, solids, thinner), solids, thinner).quantity == film


@QUICK
@given(FILM, SOLIDS, THINNER)
def test_p02_wet_film_is_at_least_the_dry_one(film: Quantity, solids: Quantity, thinner: Quantity) -> None:
    wet = wet_film("w", film, solids, thinner).quantity
    assert wet >= film
    assert (wet == film) is (solids == percent(100) and thinner.base == 0)


@QUICK
@given(FILM, SOLIDS, THINNER)
def test_p03_wet_film_rises_with_film_and_thinner_and_falls_with_solids(
    film: Quantity, solids: Quantity, thinner: Quantity
) -> None:
    wet = wet_film("w", film, solids, thinner).quantity
    assert wet_film("w", um(film.base + 1), solids, thinner).quantity > wet
    assert wet_film("w", film, solids, Quantity.of("percentage", thinner.base + 1, "%")).quantity > wet
    assert wet_film("w", film, percent(solids.base + 1), thinner).quantity < wet


@QUICK
@given(SOLIDS, THINNER, THINNER)
def test_p04_thinning_twice(solids: Quantity, first: Quantity, second: Quantity) -> None:
    assert thinned_volume_solids("t", solids, Quantity.of("percentage", 0, "%")).quantity == solids
    on_thinned = thinned_volume_solids("t", thinned_volume_solids("s", solids, first), second)
    assert on_thinned.number == solids.base / ((1 + first.base / 100) * (1 + second.base / 100))
    both = Quantity.of("percentage", first.base + second.base, "%")
    on_base = thinned_volume_solids("t", solids, both)
    assert on_base.number == solids.base / (1 + (first.base + second.base) / 100)
    assert on_base.number >= on_thinned.number


@QUICK
@given(SOLIDS, FILM)
def test_p05_p06_spreading_rate_times_film_and_its_wet_film(solids: Quantity, film: Quantity) -> None:
    rate = spreading_rate("s", solids, film)
    assert rate.number * film.base == 10 * solids.base
    assert rate.number * wet_film("x", film, solids).number == 1000


@QUICK
@given(SOLIDS, amounts("thickness", "mil", 1, 50))
def test_p07_us_rate_is_the_metric_one_within_the_rounding_of_1604(solids: Quantity, film: Quantity) -> None:
    american, metric = spreading_rate_us("u", solids, film).quantity, spreading_rate("m", solids, film).quantity
    assert 0 < 1 - american.base / metric.base < Fraction(2, 10_000)


@QUICK
@given(SOLIDS, FILM, LOSS, SURPLUS)
def test_p08_practical_rate_is_never_above_the_theoretical(
    solids: Quantity, film: Quantity, loss: Quantity, surplus: Quantity
) -> None:
    rate = spreading_rate("s", solids, film)
    by_share = practical_spreading_rate("p", rate, LossShare(loss))
    assert by_share.number == rate.number * (1 - loss.base / 100) <= rate.number
    by_surplus = practical_spreading_rate("p", rate, Surplus(surplus))
    assert by_surplus.number == rate.number / (1 + surplus.base / 100) <= rate.number


@QUICK
@given(AREA, FILM, SOLIDS, LOSS, st.integers(2, 9))
def test_p10_litres_are_linear(area: Quantity, film: Quantity, solids: Quantity, loss: Quantity, times: int) -> None:
    needed = litres("l", [Demand(area, film)], solids, LossShare(loss)).number
    wider = Quantity.of("area", area.base * times, "m2")
    assert litres("l", [Demand(wider, film)], solids, LossShare(loss)).number == needed * times
    assert litres("l", [Demand(area, um(film.base * times))], solids, LossShare(loss)).number == needed * times
    assert needed * solids.base == litres("l", [Demand(area, film)], percent(100), LossShare(loss)).number * 100
    half_reaches = LossShare(percent(100 - (100 - loss.base) / 2))
    assert litres("l", [Demand(area, film)], solids, half_reaches).number == needed * 2


@QUICK
@given(AREA, FILM, FILM, FILM, SOLIDS, LOSS)
def test_p11_litres_of_coats_add_up_and_dead_volume_counts_once(
    area: Quantity, first: Quantity, second: Quantity, profile: Quantity, solids: Quantity, loss: Quantity
) -> None:
    def needed(*films: Quantity) -> Fraction:
        return litres("l", [Demand(area, film) for film in films], solids, LossShare(loss)).number

    assert needed(first) + needed(second) == needed(um(first.base + second.base)) == needed(first, second)
    dead = dead_volume("dv", profile, DeadVolume.BY_ROUGHNESS).quantity
    assert needed(first, second, dead) - needed(first, second) == needed(dead)


@QUICK
@given(amounts("thickness", "um", 0, 299), amounts("thickness", "um", 0, 1))
def test_p12_dead_volume_is_two_thirds_of_rz_and_never_falls(profile: Quantity, more: Quantity) -> None:
    assert dead_volume("dv", profile, DeadVolume.BY_ROUGHNESS).number == profile.base * 2 / 3
    deeper = um(profile.base + more.base)
    for convention in DeadVolume:
        assert dead_volume("a", profile, convention).quantity <= dead_volume("b", deeper, convention).quantity


@QUICK
@given(contents())
def test_p13_volume_solids_against_solids_by_mass(components: list[Component]) -> None:
    found, by_mass = volume_solids("v", components).number, shares(components)[0]
    solids, *volatiles = densities(components)
    assert 0 < found <= 100
    if solids >= max(volatiles):
        assert found <= by_mass
    level = [Component(entry.name, entry.share, components[0].density, entry.role) for entry in components]
    assert volume_solids("v", level).number == by_mass


@QUICK
@given(contents())
def test_p16_without_propellant_there_are_more_solids(components: list[Component]) -> None:
    assert propellant_free_volume_solids("f", components).number > volume_solids("v", components).number


@QUICK
@given(contents())
def test_p17_shares_by_volume_add_up_as_those_by_mass(components: list[Component]) -> None:
    assert sum(shares(components)) == 100
    parts = []
    for counted in ("solids", "solvent", "propellant"):
        # each in turn takes the place of the solids
        roles = {counted: "solids", "solids": counted}
        turned = [Component(e.name, e.share, e.density, roles.get(e.role, e.role)) for e in components]  # type: ignore[arg-type]  # as above
        parts.append(volume_solids("v", turned).number)
    assert sum(parts) == 100


@QUICK
@given(CAN, PART, PART, FILM)
def test_p18_area_times_film_is_what_the_can_delivers(
    solids: Quantity, delivered: Quantity, transfer: Quantity, film: Quantity
) -> None:
    area = area_per_can("a", solids, delivered, transfer, film).number
    assert area * film.base == solids.base * delivered.base / 100 * transfer.base / 100


@QUICK
@given(AREA, FILM, CAN, PART, amounts("share", "%", 1, 98))
def test_p19_cans_are_the_least_that_suffice(
    area: Quantity, film: Quantity, solids: Quantity, delivered: Quantity, transfer: Quantity
) -> None:
    def needed(area: Quantity, film: Quantity, transfer: Quantity) -> Fraction:
        found = cans("c", [Demand(area, film)], solids, delivered, transfer).result
        assert isinstance(found, Fraction)
        return found

    count = needed(area, film, transfer)
    covered = area_per_can("a", solids, delivered, transfer, film).number
    assert count.denominator == 1
    assert count * covered >= area.base > (count - 1) * covered
    assert needed(Quantity.of("area", area.base + 1, "m2"), film, transfer) >= count
    assert needed(area, um(film.base + 1), transfer) >= count
    assert needed(area, film, percent(transfer.base + 1)) <= count


@QUICK
@given(FILM, FILM, FILM, SOLIDS)
def test_p39_coats_are_the_least_that_reach(target: Quantity, most: Quantity, sag: Quantity, solids: Quantity) -> None:
    limit = min(most.base, sag.base * solids.base / 100)
    count = coats_for("n", target, most, sag, solids).number
    assert count * limit >= target.base > (count - 1) * limit
    assert count == math.ceil(target.base / limit)


@QUICK
@given(st.lists(st.tuples(amounts("volume", "L", 1, 100), SOLIDS, PART), min_size=1, max_size=4))
def test_p41_mean_transfer_lies_between_its_parts(parts: list[tuple[Quantity, Quantity, Quantity]]) -> None:
    mean = mean_transfer("t", parts).quantity
    assert min(transfer for _, _, transfer in parts) <= mean <= max(transfer for _, _, transfer in parts)


@QUICK
@given(FILM, amounts("spreading_rate", "m2/L", 1, 100))
def test_p42_units_there_and_back_are_exact(film: Quantity, rate: Quantity) -> None:
    assert Quantity.of("thickness", film.to("mil"), "mil") == film
    assert Quantity.of("spreading_rate", rate.to("ft2/gal"), "ft2/gal") == rate


@QUICK
@given(SURPLUS)
def test_p43_surplus_as_a_share_takes_the_same_paint(surplus: Quantity) -> None:
    share = share_of_surplus("s", Surplus(surplus))
    assert share.number == 100 * surplus.base / (100 + surplus.base)
    by_surplus, by_share = (
        litres("l", [Demand(Quantity.of("area", 1, "m2"), um(60))], percent(50), loss).number
        for loss in (Surplus(surplus), LossShare(share))
    )
    assert by_surplus == by_share
    assert (surplus.base == 0) is (share.number == 0)


@QUICK
@given(DENSITY, amounts("mass", "g", 1, 500), PART)
def test_mass_of_solids_over_their_density_is_their_volume(density: Quantity, mass: Quantity, share: Quantity) -> None:
    assert solids_from_mass("s", mass, share, density).number * density.base == mass.base * share.base / 100
