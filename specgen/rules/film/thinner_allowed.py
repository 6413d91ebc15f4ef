"""FLM018 No more thinner than the product allows

Checks
    The thinner addition of each coat against the maximum of its product; a product in an aerosol can is not thinned, and one that is nearly free of solvent and states no maximum is a warning.
Why
    Thinner lowers the DFT of every cross coat and retains solvent in the film; nothing at all can be added to a closed can.
Passes
    systems.chassis.layers.barrier.thinner: 10 %
    products.barrier.application.mixing.thinner_voc: 500 g/L

    Given second good
    systems.deck.layers.gloss.thinner: 15 %
Fails
    systems.chassis.layers.barrier.thinner: 12 %    # at systems.chassis.layers.barrier.thinner
    products.barrier.application.mixing.thinner_voc: 500 g/L

    systems.cab.layers.primer.thinner: 5 %    # at systems.cab.layers.primer.thinner

    systems.chassis.layers.barrier.thinner: 5 %    # note at systems.chassis.layers.barrier.thinner
    products.barrier.application.mixing.thinner_voc: 500 g/L
    without products.barrier.application.mixing.thinner_max

    products.barrier.solids: {in_can: 96 %, sprayed: 96 %}    # also USU017 at products.barrier.solids.in_can
    systems.chassis.layers.barrier.thinner: 5 %    # warning at systems.chassis.layers.barrier.thinner
    products.barrier.application.mixing.thinner_voc: 500 g/L
    without products.barrier.application.mixing.thinner_max

    Given second good
    systems.deck.layers.gloss.thinner: 15.1 %    # at systems.deck.layers.gloss.thinner

    systems.cab.layers.clear.thinner: 1 %    # at systems.cab.layers.clear.thinner

    Given second good
    without products.gloss.application
    systems.deck.layers.gloss.thinner: 5 %    # note at systems.deck.layers.gloss.thinner    # also CUR004 at products.gloss.application.can_temperature    # also CUR004 at products.gloss.application.mixing.clock_starts    # also CUR004 at products.gloss.application.mixing.ratio_by_volume    # also CUR004 at products.gloss.application.mixing.stir    # also CUR004 at products.gloss.application.nozzle

    systems.chassis.layers.second: {id: second, role: primer, product: barrier, variant: standard, film: {min: 60 um, nominal: 80 um, max: 120 um}, coats: 1, thinner: 10.1 %}    # at systems.chassis.layers.second.thinner
    products.barrier.application.mixing.thinner_voc: 500 g/L
    systems.chassis.layers.barrier.thinner: 0 %    # also LAY007 at systems.chassis.layers.barrier.overcoat_interval    # also OVR002 at systems.chassis.layers.second.product
To put right
    Omit the thinner; warm paint that is too viscous when cold instead of thinning it.
"""

from specgen.facts.product.thinned import solvent_free
from specgen.model.product import PackForm
from specgen.rules.kit import (
    ERROR,
    LOGIC,
    NOTE,
    PRACTICE,
    WARNING,
    Concern,
    Problem,
    Problems,
    Spec,
    System,
    date,
    rule,
)


@rule("FLM018", on=System, severity=ERROR, concern=Concern.PRODUCT, source=LOGIC)
def thinner_allowed(system: System, spec: Spec, on: date) -> Problems:
    for layer in system.layers:
        if layer.thinner is None or layer.thinner.base == 0:
            continue
        path, product = ("layers", layer.id, "thinner"), spec.product_of(layer)
        mixing = product.application.mixing if product.application is not None else None
        most = mixing.thinner_max if mixing is not None else None
        if product.pack.form is PackForm.AEROSOL:
            yield Problem(
                path, f"thinner addition {layer.thinner}, but the product {product.id} is supplied in an aerosol can"
            )
        elif layer.product is None:
            continue  # what the coat allows is asked of the product that is offered
        elif most is None and solvent_free(product):
            what = f"thinner addition {layer.thinner}, but {product.id} is nearly free of solvent and states no thinner"
            yield Problem(path, what, "leave the thinner out, and warm paint that is too viscous", WARNING, PRACTICE)
        elif most is None:
            what = (
                f"a thinner addition of {layer.thinner} cannot be assessed: the product {product.id} states no maximum"
            )
            yield Problem(path, what, "write application.mixing.thinner_max of the product", severity=NOTE)
        elif layer.thinner > most:
            yield Problem(
                path, f"thinner addition {layer.thinner} is above the maximum of the product {product.id}, {most}"
            )
