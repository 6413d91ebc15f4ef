"""WIN004 A planned interval holds at the job's air temperatures

Checks
    The interval of each overcoated coat that cures chemically: its maximum, against the overcoating interval that its product states at or above the warmest air of a job; where all stated intervals are for cooler air, that interval shortened as the published intervals of polyurethane shorten. Its minimum likewise where all stated intervals are for warmer air; where the published intervals do not reach down to the air temperature of the job, the minimum is not known there.
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
Fails
    products.primer.overcoat.any-warm.air: 15.1 degC    # at systems.cab.layers.primer.overcoat_interval

    Given second good
    without products.mastic.overcoat.any-cool
    jobs.rails.climate.air: 59..77 degF
    jobs.lids.climate.air: 61..70 degF    # at systems.deck.layers.second.overcoat_interval

    products.primer.overcoat.any-warm.air: 20 degC
    jobs.refit.climate.air: 20..30 degC    # at systems.cab.layers.primer.overcoat_interval

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

from specgen.facts.layer.bands import bands, family_names, shrinkage
from specgen.facts.layer.intervals import at_or_above, coldest_air, late_allowed, warmest_air, windows_for
from specgen.facts.pairs.families import binder_family
from specgen.model.product import OvercoatWindow
from specgen.rules.kit import (
    LOGIC,
    PRACTICE,
    WARNING,
    Citation,
    Problem,
    Problems,
    Quantity,
    Spec,
    System,
    date,
    rule,
    show,
    table,
)
from specgen.units.rounding import round_half_up

_CURES = {"chemical", "moisture", "released by moisture"}
_LIKE = ", as the published intervals of polyurethane change with the air temperature"
_MOST, _LEAST = "most_h", "least_h"


@rule(
    "WIN004",
    on=System,
    severity=WARNING,
    source=table("recoat_windows").row_citation(bands()[0]),
)
def window_at_the_air(system: System, spec: Spec, on: date) -> Problems:
    warmest, coldest = warmest_air(system, spec), coldest_air(system, spec)
    for below, above in zip(system.layers, system.layers[1:], strict=False):
        family, windows = spec.product_of(below).binder, windows_for(below, above, spec)
        if below.overcoat_interval is None or not windows or binder_family(family)["cure"] not in _CURES:
            continue
        path, interval = ("layers", below.id, "overcoat_interval"), below.overcoat_interval
        last = _last(windows, warmest) if warmest is not None and not late_allowed(below, above) else None
        if last is not None and interval.high is not None and interval.high > last[0]:
            what = f"interval {interval}: in air up to {warmest} the maximum overcoating interval of {below.product} is {show(last[0])}{'' if last[1] else _LIKE}"
            yield Problem(path, what, source=LOGIC if last[1] else _ground(family))
        first = _first(windows, coldest) if coldest is not None else None
        if first is not None and interval.low is not None and interval.low < first:
            what = f"interval {interval}: in air down to {coldest} the minimum overcoating interval of {below.product} is {show(first)}{_LIKE}"
            yield Problem(path, what, source=_ground(family))
        elif first is None and coldest is not None and _unstated(windows, coldest):
            known = f"{windows[0].interval.low} at {windows[0].air}"
            what = f"interval {interval}: the minimum overcoating interval of {below.product} is not stated for {coldest}, only {known} and for warmer air"
            remedy = "ask the manufacturer for the interval at this air temperature, or keep the air warmer"
            yield Problem(path, what, remedy, source=LOGIC)


def _unstated(windows: tuple[OvercoatWindow, ...], coldest: Quantity) -> bool:
    """True where all intervals are for warmer air, and nothing published tells how much longer the minimum is in colder air."""
    coolest = windows[0]
    return (
        coolest.air > coldest and coolest.interval.low is not None and shrinkage(coolest.air, coldest, _LEAST) is None
    )


def _last(windows: tuple[OvercoatWindow, ...], warmest: Quantity) -> tuple[Quantity, bool] | None:
    """The maximum interval in the warmest air, and whether the manufacturer states it."""
    stated = at_or_above(windows, warmest)
    if stated is not None:
        return (stated.interval.high, True) if stated.interval.high is not None and len(windows) > 1 else None
    hottest = windows[-1]
    share = shrinkage(hottest.air, warmest, _MOST)
    if share is None or hottest.interval.high is None or share >= 1:
        return None
    high = hottest.interval.high
    return _times(high, share), False


def _first(windows: tuple[OvercoatWindow, ...], coldest: Quantity) -> Quantity | None:
    """The minimum interval in the coldest air, where every stated one is for warmer air."""
    coolest = windows[0]
    share = shrinkage(coolest.air, coldest, _LEAST) if coolest.air > coldest else None
    if share is None or coolest.interval.low is None or share <= 1:
        return None
    return _times(coolest.interval.low, share)


def _times(time: Quantity, share: Fraction) -> Quantity:
    return Quantity.of("duration", time.number * share, time.unit, str(round_half_up(time.number * share, 0)))


def _ground(family: str) -> Citation:
    """Published for polyurethane; for other coats that cure it is taken over from there."""
    published = table("recoat_windows").row_citation(bands()[0])
    return published if family_names(family).get("pu", PRACTICE).basis.confirmed else PRACTICE
