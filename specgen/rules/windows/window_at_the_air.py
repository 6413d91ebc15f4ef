"""WIN004 A planned interval holds at the job's air temperatures

Checks
    The interval of each overcoated coat: its maximum, against the overcoating interval that its product states at or above the warmest air of a job; where all stated intervals are for cooler air, that interval shortened as the published intervals of polyurethane shorten. Its minimum likewise where all stated intervals are for warmer air. Where the published intervals do not reach to the stated temperature, or the coat dries without curing, a longer maximum or a shorter minimum than that is not stated for that temperature.
Why
    Warm air shortens an overcoating interval and cold air delays it: a figure for 20 degC is wrong at noon in the sun and wrong again in the morning.
Passes
    jobs.refit.climate.air: 15..27 degC

    products.primer.overcoat: [{id: any-cool, next_coat: any, interval: 30 min..24 h, air: 12 degC, if_exceeded: abrade with P400 and dust off}]

    Given second good
    jobs.rails.climate.air: 55..84 degF
    systems.deck.layers.first.overcoat_interval: 6 h..72 h

    Given second good
    without products.mastic.overcoat.itself
    jobs.rails.climate.air: 61..77 degF
    jobs.lids.climate.air: 61..70 degF
    systems.deck.layers.first.overcoat_interval: 4 h..96 h

    Given second good
    jobs.rails.climate.air: 55..84 degF
    systems.deck.layers.first.abraded_with: P180

    products.primer.overcoat.any-warm.air: 15 degC
    jobs.refit.climate.air: 15..25 degC

    jobs.refit.climate.air: 15..30 degC
    systems.cab.layers.primer.overcoat_interval: 30 min..18 h
    systems.cab.layers.base.overcoat_interval: 20 min..18 h

    products.base.overcoat.clear.interval: min 20 min
    systems.cab.layers.base.overcoat_interval: min 20 min
    jobs.refit.climate.air: 15..30 degC
    systems.cab.layers.primer.abraded_with: P400

    products.base.overcoat.cold: {id: cold, next_coat: clear, interval: 40 min..24 h, air: 10 degC}
    products.base.overcoat.clear.air: 25 degC
    systems.cab.layers.base.overcoat_interval: 40 min..24 h
Fails
    jobs.refit.climate.air: 15..30 degC    # at systems.cab.layers.base.overcoat_interval    # at systems.cab.layers.primer.overcoat_interval
    systems.cab.layers.primer.overcoat_interval: 30 min..18.1 h

    products.base.overcoat.clear.air: 20 degC    # at systems.cab.layers.base.overcoat_interval

    products.base.overcoat.clear.air: 23 degC    # at systems.cab.layers.base.overcoat_interval
    jobs.refit.climate.air: 17..25 degC
    systems.cab.layers.base.overcoat_interval: 26 min..24 h

    products.base.overcoat.hot: {id: hot, next_coat: clear, interval: 15 min..16 h, air: 28 degC}    # at systems.cab.layers.base.overcoat_interval

    products.primer.overcoat.any-warm.air: 15.1 degC    # at systems.cab.layers.primer.overcoat_interval

    Given second good
    without products.mastic.overcoat.any-cool
    jobs.rails.climate.air: 59..77 degF
    jobs.lids.climate.air: 61..70 degF    # at systems.deck.layers.second.overcoat_interval

    products.primer.overcoat.any-warm.air: 20 degC
    jobs.refit.climate.air: 20..30 degC    # at systems.cab.layers.base.overcoat_interval    # at systems.cab.layers.primer.overcoat_interval

    products.primer.overcoat.any-hot: {id: any-hot, next_coat: any, interval: 20 min..16 h, air: 28 degC}    # at systems.cab.layers.primer.overcoat_interval

    Given second good
    jobs.rails.climate.air: 55..84 degF
    systems.deck.layers.first.overcoat_interval: 6 h..73 h    # at systems.deck.layers.first.overcoat_interval

    Given second good
    without products.mastic.overcoat.itself
    jobs.rails.climate.air: 61..77 degF
    jobs.lids.climate.air: 61..70 degF
    systems.deck.layers.first.overcoat_interval: 3.9 h..96 h    # at systems.deck.layers.first.overcoat_interval

    Given second good
    systems.deck.layers.first.overcoat_interval: 6 h..97 h    # at systems.deck.layers.first.overcoat_interval

    Given second good
    without systems.deck.layers.second.abraded_with
    systems.deck.layers.second.overcoat_interval: 8 h..73 h    # at systems.deck.layers.second.overcoat_interval
To put right
    State intervals at several temperatures, plan the interval for the warmest hour of the job, or control the air temperature more closely.
"""

from fractions import Fraction

from specgen.facts.layer.bands import band_of, bands, family_names, shrinkage
from specgen.facts.layer.intervals import at_or_above, coldest_air, late_allowed, warmest_air, windows_for
from specgen.facts.pairs.families import binder_family
from specgen.model.drying import OvercoatWindow
from specgen.rules.kit import (
    LOGIC,
    PRACTICE,
    WARNING,
    Citation,
    Layer,
    Problem,
    Problems,
    Quantity,
    Range,
    Spec,
    System,
    date,
    rule,
    show,
    table,
)
from specgen.units.rounding import round_half_up

# Their intervals change with the air by the rate of a reaction, as those of polyurethane do; other coats dry.
_CURES = {"chemical", "moisture", "released by moisture"}
_LIKE = ", as the published intervals of polyurethane change with the air temperature"
_MOST, _LEAST = "most_h", "least_h"
_ASK_COLD = "ask the manufacturer for the interval at this air temperature, or keep the air warmer"
_ASK_HOT = (
    "ask the manufacturer for the interval at this air temperature, keep the air cooler, or plan a shorter interval"
)


@rule(
    "WIN004",
    on=System,
    severity=WARNING,
    source=table("recoat_windows").row_citation(bands()[0]),
)
def window_at_the_air(system: System, spec: Spec, on: date) -> Problems:
    warmest, coldest = warmest_air(system, spec), coldest_air(system, spec)
    for below, above in zip(system.layers, system.layers[1:], strict=False):
        windows = windows_for(below, above, spec)
        if below.overcoat_interval is None or not windows:
            continue
        if warmest is not None and not late_allowed(below, above):
            yield from _too_late(below, below.overcoat_interval, windows, warmest, spec)
        if coldest is not None:
            yield from _too_early(below, below.overcoat_interval, windows, coldest, spec)


def _too_late(
    below: Layer, planned: Range, windows: tuple[OvercoatWindow, ...], warmest: Quantity, spec: Spec
) -> Problems:
    """Of one interval alone, stated for air as warm as the job's, the rule on the product's own interval speaks."""
    path, family = ("layers", below.id, "overcoat_interval"), spec.product_of(below).binder
    said = f"interval {planned}: in air up to {warmest} the maximum overcoating interval of {below.product} is"
    stated, hottest = at_or_above(windows, warmest), windows[-1]
    high = stated.interval.high if stated is not None else hottest.interval.high
    if planned.high is None or high is None:
        return
    if stated is not None:
        if len(windows) > 1 and planned.high > high:
            by = "" if stated.air == warmest else f", as stated for {stated.air}"
            yield Problem(path, f"{said} {show(high)}{by}", source=LOGIC)
        return
    # the published bands begin at 16 degC; a maximum stated for cooler air is longer still
    banded = band_of(hottest.air) is not None
    share = shrinkage(hottest.air if banded else _coolest_band(), warmest, _MOST)
    if share is not None and (share >= 1 or planned.high.base <= high.base * share):
        return
    if share is not None and banded and binder_family(family)["cure"] in _CURES:
        yield Problem(path, f"{said} {show(_times(high, share))}{_LIKE}", source=_ground(family))
    else:
        what = f"interval {planned}: the maximum overcoating interval of {below.product} is not stated for {warmest}, only {high} at {hottest.air} and for cooler air; warm air shortens it"
        yield Problem(path, what, _ASK_HOT, source=PRACTICE)


def _too_early(
    below: Layer, planned: Range, windows: tuple[OvercoatWindow, ...], coldest: Quantity, spec: Spec
) -> Problems:
    path, family, coolest = ("layers", below.id, "overcoat_interval"), spec.product_of(below).binder, windows[0]
    low = coolest.interval.low
    if low is None or coolest.air <= coldest:
        return
    share = shrinkage(coolest.air, coldest, _LEAST)
    if share is None:
        yield Problem(path, _unstated(below, planned, coolest, coldest), _ASK_COLD, source=LOGIC)
    elif share > 1 and planned.low is not None and planned.low < (longer := _times(low, share)):
        if binder_family(family)["cure"] in _CURES:
            what = f"interval {planned}: in air down to {coldest} the minimum overcoating interval of {below.product} is {show(longer)}{_LIKE}"
            yield Problem(path, what, source=_ground(family))
        else:
            yield Problem(path, _unstated(below, planned, coolest, coldest), _ASK_COLD, source=LOGIC)


def _unstated(below: Layer, planned: Range, coolest: OvercoatWindow, coldest: Quantity) -> str:
    return f"interval {planned}: the minimum overcoating interval of {below.product} is not stated for {coldest}, only {coolest.interval.low} at {coolest.air} and for warmer air"


def _coolest_band() -> Quantity:
    return Quantity.of("temperature", int(bands()[0]["surface_from_C"]), "degC")


def _times(time: Quantity, share: Fraction) -> Quantity:
    return Quantity.of("duration", time.number * share, time.unit, str(round_half_up(time.number * share, 0)))


def _ground(family: str) -> Citation:
    """Published for polyurethane; for other coats that cure it is taken over from there."""
    published = table("recoat_windows").row_citation(bands()[0])
    return published if family_names(family).get("pu", PRACTICE).basis.confirmed else PRACTICE
