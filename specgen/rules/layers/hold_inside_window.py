"""LAY006 The wait between two coats is inside the overcoat window

Checks
    The hold of each layer that is covered, against the overcoat window its product states for the product above. A window holds for its air temperature: taken for each job with the system is the one nearest at or below its coldest air, or else the coolest one stated. A coat that is abraded (abraded_with), or covered by a layer that begins with a tie coat, may be covered late.
Why
    Too soon, solvent is trapped and the coat below lifts; too late, the next coat finds nothing to grip.
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
To put right
    Stay inside the window of the data sheet; where the work cannot, abrade before the next coat (an epoxy primer with P320 to P400) and state abraded_with.
"""

from specgen.facts.layer.intervals import airs_of, interval
from specgen.rules.kit import ERROR, LOGIC, NOTE, Problem, Problems, Spec, System, date, rule


@rule("LAY006", on=System, severity=ERROR, source=LOGIC)
def hold_inside_window(system: System, spec: Spec, on: date) -> Problems:
    for below, above in zip(system.layers, system.layers[1:], strict=False):
        path, hold = ("layers", below.id, "overcoat_interval"), below.overcoat_interval
        if hold is None:
            continue
        # each job is judged by the window its method statement goes by; of two jobs in one window the colder is named
        judged: set[str] = set()
        for air in airs_of(system, spec):
            held = interval(below, above, spec, air)
            if held.window is None or held.allowed is None:
                what = f"the product {below.product} states no overcoat window for {above.product}, so the hold cannot be judged"
                yield Problem(path, what, severity=NOTE)
                break
            if held.window.id not in judged and not held.allowed.holds_all_of(hold):
                coldest = f", taken for the coldest air of {air}" if air is not None else ""
                what = (
                    f"{above.id} is to follow {below.id} in {hold}, but the product {below.product}"
                    f" may be covered in {held.allowed} at {held.window.air}{coldest}"
                )
                yield Problem(path, what)
            judged.add(held.window.id)
