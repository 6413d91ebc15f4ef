"""REL005 A coat is not sanded before it may be

Checks
    The minimum overcoating interval of each coat that is abraded before the next (abraded_with, sanding_removes), against the time before sanding that its product states for the lowest air temperature of the jobs, wet where the paper is named with water and else dry. A time stated for warmer air alone is not known for the job: less than that is an error all the same, otherwise a warning.
Why
    A coat that is still soft clogs the paper, tears and takes scratches that show through; its dust is that of uncured paint.
Passes
    products.primer.sandable_after: [{id: dry, sanding: dry, time: 6 h, air: 15 degC}]
    systems.cab.layers.primer.abraded_with: P400
    systems.cab.layers.primer.overcoat_interval: 6 h..24 h

    products.primer.sandable_after: [{id: dry, sanding: dry, time: 6 h, air: 15 degC}, {id: wet, sanding: wet, time: 30 min, air: 15 degC}]
    systems.cab.layers.primer.abraded_with: P800 wet

    products.primer.sandable_after: [{id: dry, sanding: dry, time: 6 h, air: 15 degC}]
Fails
    products.primer.sandable_after: [{id: dry, sanding: dry, time: 5..6 h, air: 15 degC}]    # at systems.cab.layers.primer.overcoat_interval
    systems.cab.layers.primer.abraded_with: P400
    systems.cab.layers.primer.overcoat_interval: 5.9 h..24 h

    products.primer.sandable_after: [{id: dry, sanding: dry, time: 31 min, air: 20 degC}]    # at systems.cab.layers.primer.overcoat_interval
    systems.cab.layers.primer.abraded_with: P400

    products.primer.sandable_after: [{id: dry, sanding: dry, time: 30 min, air: 20 degC}]    # warning at systems.cab.layers.primer.overcoat_interval
    systems.cab.layers.primer.abraded_with: P400

    Given second good
    products.mastic.sandable_after: [{id: dry, sanding: dry, time: 9 h, air: 50 degF}]    # at systems.deck.layers.second.overcoat_interval
To put right
    Begin the interval when the coat may be sanded at the lowest air temperature of the job, or keep the air warmer.
"""

from specgen.facts.layer.intervals import coldest_air
from specgen.facts.layer.sanding import sandable_from, sanded, way_of_sanding
from specgen.facts.product.drying import Unstated, longest
from specgen.rules.kit import ERROR, LOGIC, WARNING, Problem, Problems, Spec, System, date, rule, show


@rule("REL005", on=System, severity=ERROR, source=LOGIC)
def hard_enough_to_sand(system: System, spec: Spec, on: date) -> Problems:
    air = coldest_air(system, spec)
    for layer in system.layers[:-1]:
        planned = layer.overcoat_interval.low if layer.overcoat_interval is not None else None
        if not sanded(layer) or planned is None or air is None:
            continue
        found = sandable_from(layer, spec, air)
        if found is None:
            continue
        way, path = way_of_sanding(layer), ("layers", layer.id, "overcoat_interval")
        said = f"{layer.id} is sanded {show(planned)} after it is applied at the earliest"
        at = f"at {found.stated_at}, and the air may be {air}" if isinstance(found, Unstated) else f"at {air}"
        if planned < longest(found):
            yield Problem(
                path, f"{said}, but {layer.product} may be sanded {way} only after {show(longest(found))} {at}"
            )
        elif isinstance(found, Unstated):
            what = f"{said}; when {layer.product} may be sanded {way} is not stated for {air}, only for {found.stated_at} and warmer"
            yield Problem(path, what, severity=WARNING)
