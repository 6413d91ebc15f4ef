"""FIL010 Body filler is primed before the colour coat

Checks
    The coat over each coat of body filler: a primer, surfacer, sealer or intermediate coat.
Why
    Body filler left open absorbs the colour coat: the patch sinks, its rings show, and it takes up water.
Passes
    Given a body filler under a primer

    Given a body filler under a primer
    systems.chassis.layers.grey.role: surfacer
    products.primer.roles: [primer, surfacer]

    Given a body filler under a primer
    systems.chassis.layers.grey.role: intermediate
    products.primer.roles: [primer, intermediate]
Fails
    products.barrier.binder: polyester_putty    # at systems.chassis.layers.barrier
    jobs.refit.climate.air: 20..25 degC

    Given a body filler under a primer
    systems.chassis.layers.grey: {id: grey, role: topcoat, product: primer, variant: grey, film: {min: 40 um, nominal: 60 um, max: 80 um}, passes: 4}
    products.primer.roles: [primer, topcoat]    # at systems.chassis.layers.fill

    products.base.roles: [body-filler]
    systems.cab.layers.base.role: body-filler    # at systems.cab.layers.base    # also LAY003 at systems.cab.layers.clear.role
To put right
    Apply a surfacer or an epoxy primer over every filled area and beyond its edge.
"""

from specgen.facts.pairs.acids import CLOSING
from specgen.facts.pairs.families import BODY_FILLER
from specgen.rules.kit import PRACTICE, WARNING, Problem, Problems, Role, Spec, System, date, rule


@rule("FIL010", on=System, severity=WARNING, source=PRACTICE)
def filler_covered(system: System, spec: Spec, on: date) -> Problems:
    for at, layer in enumerate(system.layers):
        if layer.role is not Role.BODY_FILLER and spec.product_of(layer).binder != BODY_FILLER:
            continue
        above = system.layers[at + 1] if at + 1 < len(system.layers) else None
        if above is None or (above.role not in CLOSING and above.role is not Role.BODY_FILLER):
            followed = (
                f"followed by the {above.role} {above.id}, not by" if above is not None else "not overcoated with"
            )
            what = f"the body filler {layer.id} is {followed} a primer, surfacer, sealer or intermediate coat"
            yield Problem(("layers", layer.id), what)
