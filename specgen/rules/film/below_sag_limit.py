"""FLM014 The WFT stays below the sag limit

Checks
    The wet film thickness (WFT) of one cross coat (of one coat where no cross coats are stated), as stated or as calculated from the nominal DFT, against the sag limit of the product.
Why
    Above the sag limit the coat runs on a vertical surface before it sets, and sanding out the runs removes the coat with them.
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
    Apply more and thinner cross coats or coats: the DFT of each is at most the sag limit times the volume solids.
"""

from specgen.facts.layer.figures import solids_sprayed, wet_target
from specgen.rules.kit import (
    ERROR,
    LOGIC,
    NOTE,
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
    unless_rounded,
)
from specgen.trade.known import NotKnown, worked_out
from specgen.trade.working import Working
from specgen.units.quantity import as_range


@rule("FLM014", on=System, severity=ERROR, source=LOGIC)
def below_sag_limit(system: System, spec: Spec, on: date) -> Problems:
    for layer in system.layers:
        limit = spec.product_of(layer).film.sag_limit_wet
        if limit is None:
            continue
        by_passes = layer.passes is not None and layer.passes.low > 0
        counted = "passes" if by_passes else "coats"
        path = ("layers", layer.id, "wet_target" if layer.wet_target is not None else counted)
        wet = _thickest(layer.wet_target) if layer.wet_target is not None else _worked_out(system, layer, spec)
        if isinstance(wet, NotKnown) and wet.is_fault:
            continue  # the rules on solids and figures say so
        if wet is None or isinstance(wet, NotKnown):
            what = f"the sag limit of {show(limit)} cannot be assessed: the WFT of {layer.id} cannot be calculated"
            remedy = "write the nominal DFT of the coat and the volume solids of the product"
            yield Problem(path, what, remedy, severity=NOTE)
        elif wet > limit:
            one = "cross coat" if by_passes else "coat"
            what = f"WFT {show(wet)} per {one}, but the sag limit of the product {layer.product} is {show(limit)}"
            yield unless_rounded(Problem(path, what), wet, limit)


def _thickest(target: Quantity | Range) -> Quantity | None:
    """The upper end of the target; a target that has none is not held against the limit but by its lower end."""
    aimed = as_range(target)
    return aimed.high or aimed.low


def _worked_out(system: System, layer: Layer, spec: Spec) -> Quantity | NotKnown | None:
    solids = solids_sprayed(spec.product_of(layer), spec.variant_of(layer))
    if isinstance(solids, NotKnown):
        return solids
    wet = worked_out(f"WFT of {layer.id}", lambda: wet_target(system, layer, spec, solids)[1])
    return wet.quantity if isinstance(wet, Working) else wet
