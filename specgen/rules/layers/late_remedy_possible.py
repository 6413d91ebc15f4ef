"""LAY014 A coat that is late can be abraded as its remedy orders

Checks
    Each action for a missed overcoating interval that orders abrading, against the time after which the product of the coat allows sanding at the lowest air temperature of the jobs: the interval does not end while the film may not yet be sanded.
Why
    Past its interval the next coat may not be applied, and before it may be sanded the remedy tears the film and clogs the paper: between the two the shop has no instruction it can follow.
Passes
    products.primer.sandable_after: [{id: dry, sanding: dry, time: 24 h, air: 15 degC}]

    products.primer.sandable_after: [{id: dry, sanding: dry, time: 36 h, air: 15 degC}, {id: wet, sanding: wet, time: 20 h, air: 15 degC}]
Fails
    products.primer.sandable_after: [{id: dry, sanding: dry, time: 36 h, air: 15 degC}]    # at systems.cab.layers.primer.overcoat_interval

    products.primer.sandable_after: [{id: dry, sanding: dry, time: 20 h, air: 25 degC}, {id: cold, sanding: dry, time: 25 h, air: 15 degC}]    # at systems.cab.layers.primer.overcoat_interval
To put right
    Order another remedy, or state in if_exceeded from when on the film may be sanded; or correct the time for sanding.
"""

from specgen.facts.layer.intervals import airs_of, interval
from specgen.facts.pairs.answers import says_sanding
from specgen.facts.product.drying import sandable_at
from specgen.rules.kit import LOGIC, WARNING, Problem, Problems, Spec, System, date, rule
from specgen.units.quantity import lower


@rule("LAY014", on=System, severity=WARNING, source=LOGIC)
def late_remedy_possible(system: System, spec: Spec, on: date) -> Problems:
    for below, above in zip(system.layers, system.layers[1:], strict=False):
        end = below.overcoat_interval.high if below.overcoat_interval is not None else None
        if end is None:
            continue
        for air in airs_of(system, spec):
            # dry or wet, whichever may begin sooner: the words of a remedy seldom say which
            first = min((lower(entry.time) for entry in sandable_at(spec.product_of(below), air)), default=None)
            if first is not None and end < first and says_sanding(interval(below, above, spec, air).late):
                cold = f" at {air}" if air is not None else ""
                what = f"past {end} the remedy for {below.id} is to abrade it, but {below.product} may be sanded from {first} on{cold}"
                yield Problem(("layers", below.id, "overcoat_interval"), what)
                break
