"""LAY006 The wait between two coats is inside the overcoat window

Checks
    The hold of each layer that is covered, against the overcoat window its product states for the product above. A window holds for its air temperature: taken is the one nearest at or below the coldest air of any job with the system, or else the coolest one stated. A coat that is abraded (abraded_with), or covered by a layer that begins with a tie coat, may be covered late.
Why
    Too soon, solvent is trapped and the coat below lifts; too late, the next coat finds nothing to grip.
Passes
    systems.cab.layers.primer.hold: 45 min..12 h

    systems.cab.layers.primer.hold: 30 min..48 h
    systems.cab.layers.primer.abraded_with: P400
Fails
    systems.cab.layers.primer.hold: 15 min..24 h    # at systems.cab.layers.primer.hold

    systems.cab.layers.primer.hold: 30 min..48 h    # at systems.cab.layers.primer.hold

    systems.cab.layers.primer.hold: min 30 min    # at systems.cab.layers.primer.hold

    products.primer.overcoat.any-cool: {id: any-cool, by: any, window: 60 min..36 h, air: 14 degC}    # at systems.cab.layers.primer.hold
To put right
    Stay inside the window of the data sheet; where the work cannot, abrade before the next coat (an epoxy primer with P320 to P400) and state abraded_with.
"""

from specgen.facts.layer.windows import at_or_below, coldest_air, windows_for
from specgen.rules.kit import ERROR, LOGIC, NOTE, Problem, Problems, Range, Spec, System, date, rule


@rule("LAY006", on=System, severity=ERROR, source=LOGIC)
def hold_inside_window(system: System, spec: Spec, on: date) -> Problems:
    coldest = coldest_air(system, spec)
    for below, above in zip(system.layers, system.layers[1:], strict=False):
        if below.hold is None:
            continue
        path, windows = ("layers", below.id, "hold"), windows_for(below, above, spec)
        if not windows:
            what = f"the product {below.product} states no overcoat window for {above.product}, so the hold cannot be judged"
            yield Problem(path, what, severity=NOTE)
            continue
        stated = at_or_below(windows, coldest)
        freed = below.abraded_with is not None or above.tie_coat
        window = Range(stated.window.kind, stated.window.low, None) if freed else stated.window
        if not window.holds_all_of(below.hold):
            air = f", taken for the coldest air of {coldest}" if coldest is not None else ""
            what = (
                f"{above.id} is to follow {below.id} in {below.hold}, but the product {below.product}"
                f" may be covered in {window} at {stated.air}{air}"
            )
            yield Problem(path, what)
