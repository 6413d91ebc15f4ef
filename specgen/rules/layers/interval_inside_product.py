"""LAY006 The planned interval is within the overcoating interval of the product

Checks
    The planned interval between two coats, against the overcoating interval that the product beneath states for the product above. An interval applies at its air temperature: for each job with the system the one nearest at or below its coldest air is used, or else the coolest one stated. A minimum kept between those stated for colder and for warmer air, taken to fall evenly, is a warning. For a coat that is abraded (abraded_with), or overcoated by one that begins with a tie coat, the maximum does not apply.
Why
    If it is applied too early, solvent is trapped and the coat below lifts; if too late, the next coat does not adhere.
Passes
    systems.cab.layers.primer.overcoat_interval: 45 min..12 h

    systems.cab.layers.primer.overcoat_interval: 30 min..48 h
    systems.cab.layers.primer.abraded_with: P400

    systems.cab.layers.primer.overcoat_interval: 30 min..48 h
    systems.cab.layers.base.tie_coat: yes

    Given second good
    systems.deck.layers.first.abraded_with: P180
    systems.deck.layers.first.overcoat_interval: 6 h..40 days
Fails
    systems.cab.layers.primer.overcoat_interval: 15 min..24 h    # at systems.cab.layers.primer.overcoat_interval

    systems.cab.layers.primer.overcoat_interval: 30 min..48 h    # at systems.cab.layers.primer.overcoat_interval

    systems.cab.layers.primer.overcoat_interval: min 30 min    # at systems.cab.layers.primer.overcoat_interval

    products.primer.overcoat.any-cool: {id: any-cool, next_coat: any, interval: 60 min..36 h, air: 14 degC}    # at systems.cab.layers.primer.overcoat_interval
    products.primer.overcoat.any-warm.air: 20 degC

    systems.cab.layers.primer.overcoat_interval: 29 min..24 h    # at systems.cab.layers.primer.overcoat_interval
    systems.cab.layers.primer.abraded_with: P400

    systems.cab.layers.base.overcoat_interval: 19 min..24 h    # at systems.cab.layers.base.overcoat_interval

    systems.cab.layers.base.overcoat_interval: 20 min..24.1 h    # at systems.cab.layers.base.overcoat_interval

    Given second good
    systems.deck.layers.first.overcoat_interval: 5.9 h..96 h    # at systems.deck.layers.first.overcoat_interval

    Given second good
    systems.deck.layers.second.overcoat_interval: 7.9 h..72 h    # at systems.deck.layers.second.overcoat_interval

    without products.primer.overcoat
    systems.cab.layers.primer.overcoat_interval: 30 min..8 h    # note at systems.cab.layers.primer.overcoat_interval
    systems.cab.layers.primer.abraded_with: P400
    systems.cab.layers.base.overcoat_interval: 19 min..24 h    # at systems.cab.layers.base.overcoat_interval

    Given second good
    jobs.rails.climate.air: 77..80 degF
    systems.deck.layers.first.overcoat_interval: 4 h..72 h    # at systems.deck.layers.first.overcoat_interval

    Given second good
    jobs.lids.climate.air: 77..80 degF
    systems.deck.layers.first.overcoat_interval: 4 h..72 h    # at systems.deck.layers.first.overcoat_interval

    products.primer.overcoat.any-cool: {id: any-cool, next_coat: any, interval: 60 min..36 h, air: 10 degC}    # warning at systems.cab.layers.primer.overcoat_interval
    products.primer.overcoat.any-warm.air: 20 degC
    systems.cab.layers.primer.overcoat_interval: 45 min..24 h

    products.primer.overcoat.any-cool: {id: any-cool, next_coat: any, interval: 60 min..36 h, air: 10 degC}    # at systems.cab.layers.primer.overcoat_interval
    products.primer.overcoat.any-warm.air: 20 degC
    systems.cab.layers.primer.overcoat_interval: 44 min..24 h
To put right
    Stay within the interval of the data sheet; where the work cannot, abrade before the next coat (an epoxy primer with P320 to P400) and state abraded_with.
"""

from specgen.facts.layer.intervals import Interval, airs_of, interval, least_between, windows_for
from specgen.rules.kit import (
    ERROR,
    LOGIC,
    NOTE,
    WARNING,
    Layer,
    Problem,
    Problems,
    Quantity,
    Range,
    Spec,
    System,
    date,
    rule,
)


@rule("LAY006", on=System, severity=ERROR, source=LOGIC)
def interval_inside_product(system: System, spec: Spec, on: date) -> Problems:
    for below, above in zip(system.layers, system.layers[1:], strict=False):
        path, planned = ("layers", below.id, "overcoat_interval"), below.overcoat_interval
        if planned is None or below.product is None:
            continue
        # each job is assessed by the interval its method statement prints; of two jobs at one interval the colder is named
        judged: set[str] = set()
        for air in airs_of(system, spec):
            held = interval(below, above, spec, air)
            if held.window is None and above.product is None:
                break
            if held.window is None or held.allowed is None:
                what = f"the interval between {below.id} and {above.id} cannot be assessed: the product {below.product} states none for {above.product}"
                yield Problem(path, what, severity=NOTE)
                break
            if held.window.id not in judged and not held.allowed.holds_all_of(planned):
                coldest = f" (used for the coldest air, {air})" if air is not None else ""
                what = (
                    f"the interval {planned} between {below.id} and {above.id} is outside the overcoating interval of the product"
                    f" {below.product}, {held.allowed} at {held.window.air}{coldest}"
                )
                yield Problem(
                    path, what, severity=WARNING if _between(planned, held, below, above, spec, air) else None
                )
            judged.add(held.window.id)


def _between(planned: Range, held: Interval, below: Layer, above: Layer, spec: Spec, air: Quantity | None) -> bool:
    """True where the next coat is early by the row for colder air alone, and not between this and the row for warmer air."""
    least = least_between(windows_for(below, above, spec), air) if air is not None else None
    if least is None or planned.low is None or planned.low < least or held.allowed is None:
        return False
    return Range(planned.kind, None, held.allowed.high).holds_all_of(planned)
