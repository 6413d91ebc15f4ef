"""FLM014 The wet film stays below the sag limit

Checks
    The wet film of one pass (of one coat where no passes are stated), stated or worked out from the nominal film, against the wet film from which the product runs.
Why
    Above the sag limit the coat runs down an upright panel before it sets, and runs are sanded out with the film.
Passes
    products.barrier.film.sag_limit_wet: 160 um

    Given second good
    products.mastic.film.sag_limit_wet: 6 mil
Fails
    products.barrier.film.sag_limit_wet: 150 um    # at systems.chassis.layers.barrier.coats

    systems.chassis.layers.barrier.wet_target: 200 um
    products.barrier.film.sag_limit_wet: 190 um    # at systems.chassis.layers.barrier.wet_target

    products.clear.film.sag_limit_wet: 120 um    # note at systems.cab.layers.clear.passes
    without products.clear.solids.sprayed

    Given second good
    products.touch-up.film.sag_limit_wet: 1 mil    # at systems.touch.layers.ground.passes    # at systems.touch.layers.face.passes

    products.primer.film.sag_limit_wet: 40 um    # at systems.cab.layers.primer.passes
To put right
    Lay down more and thinner passes or coats: each at most the sag limit times the volume solids.
"""

from specgen.facts.layer.figures import solids_sprayed, wet_target
from specgen.rules.kit import ERROR, LOGIC, NOTE, Layer, Problem, Problems, Quantity, Spec, System, date, rule, show
from specgen.trade.known import NotKnown, worked_out
from specgen.trade.working import Working


@rule("FLM014", on=System, severity=ERROR, source=LOGIC)
def below_sag_limit(system: System, spec: Spec, on: date) -> Problems:
    for layer in system.layers:
        limit = spec.product_of(layer).film.sag_limit_wet
        if limit is None:
            continue
        counted = "passes" if layer.passes else "coats"
        path = ("layers", layer.id, "wet_target" if layer.wet_target is not None else counted)
        wet = layer.wet_target or _worked_out(system, layer, spec)
        if isinstance(wet, NotKnown) and wet.is_fault:
            continue  # the rules on solids and figures say so
        if wet is None or isinstance(wet, NotKnown):
            what = (
                f"the wet film of {layer.id} cannot be worked out, so the sag limit of {show(limit)} cannot be judged"
            )
            remedy = "write the nominal film of the layer and the volume solids of the product"
            yield Problem(path, what, remedy, severity=NOTE)
        elif wet > limit:
            yield Problem(path, f"{show(wet)} wet at once, but the product {layer.product} runs from {show(limit)}")


def _worked_out(system: System, layer: Layer, spec: Spec) -> Quantity | NotKnown | None:
    solids = solids_sprayed(spec.product_of(layer), spec.variant_of(layer))
    if isinstance(solids, NotKnown):
        return solids
    wet = worked_out(f"wet film of {layer.id}", lambda: wet_target(system, layer, spec, solids)[1])
    return wet.quantity if isinstance(wet, Working) else wet
