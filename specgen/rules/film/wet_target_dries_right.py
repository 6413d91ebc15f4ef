"""FLM013 The target WFT gives the DFT of the coat

Checks
    The DFT that results from the stated target WFT, the volume solids without propellant and the thinner, times the number of cross coats (or else of coats), against the minimum and maximum DFT of the coat or else of the product.
Why
    The painter works by the comb gauge: a wrong target WFT gives a wrong DFT on every panel. The most common error is to use the volume solids of the can contents; the propellant is gone when the comb gauge is used, and the DFT is far too high.
Passes
    systems.cab.layers.primer.wet_target: 50 um

    products.base.solids: {in_can: 14 %, sprayed: 25 %}
    systems.cab.layers.base.wet_target: 60 um

    products.base.solids: {in_can: 14 %, sprayed: 25 %}
    systems.cab.layers.base.wet_target: 30 um

    Given second good
    systems.deck.layers.second.wet_target: 6.5625 mil

    products.barrier.solids: {in_can: 50 %, sprayed: 50 %}
    systems.chassis.layers.barrier.wet_target: 240 um
    without systems.chassis.layers.barrier.coats
Fails
    systems.cab.layers.primer.wet_target: 85 um    # at systems.cab.layers.primer.wet_target

    systems.chassis.layers.barrier.wet_target: 100 um    # at systems.chassis.layers.barrier.wet_target

    systems.cab.layers.base.wet_target: 43 um    # note at systems.cab.layers.base.wet_target
    without products.base.solids.sprayed

    products.base.solids: {in_can: 14 %, sprayed: 25 %}
    systems.cab.layers.base.wet_target: 61 um    # at systems.cab.layers.base.wet_target

    Given second good
    systems.deck.layers.second.wet_target: 6.57 mil    # at systems.deck.layers.second.wet_target

    without products.base.solids.sprayed
    systems.cab.layers.base.wet_target: 43 um    # note at systems.cab.layers.base.wet_target
    systems.cab.layers.clear.wet_target: 57 um    # at systems.cab.layers.clear.wet_target

    products.primer.composition.gas.mass_share: 40 %    # also FLM017 at products.primer.composition    # also USE009 at products.primer.composition
    products.primer.solids: {in_can: 14 %}
    systems.cab.layers.primer.wet_target: 50 um
    products.base.solids: {in_can: 14 %, sprayed: 25 %}
    systems.cab.layers.base.wet_target: 61 um    # at systems.cab.layers.base.wet_target

    products.primer.composition.gas.mass_share: 40 %    # also FLM017 at products.primer.composition    # also USE009 at products.primer.composition
    products.primer.solids: {sprayed: 23 %}
    systems.cab.layers.primer.wet_target: 85 um
    products.base.solids: {in_can: 14 %, sprayed: 25 %}
    systems.cab.layers.base.wet_target: 61 um    # at systems.cab.layers.base.wet_target
To put right
    Leave out wet_target so that it is calculated; or write DFT times (100 + thinner) over the volume solids without propellant, divided by the number of cross coats.
"""

from collections.abc import Sequence

from specgen.facts.layer.figures import solids_in_can, solids_sprayed
from specgen.facts.layer.film import Film, film_limit
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
)
from specgen.trade.film import dry_film
from specgen.trade.given import Source
from specgen.trade.known import NotKnown
from specgen.units.count import Count
from specgen.units.display import show_range
from specgen.units.quantity import as_range


@rule("FLM013", on=System, severity=ERROR, source=LOGIC)
def wet_target_dries_right(system: System, spec: Spec, on: date) -> Problems:
    for layer in system.layers:
        if layer.wet_target is None or layer.product is None:
            continue
        path = ("layers", layer.id, "wet_target")
        product, variant = spec.product_of(layer), spec.variant_of(layer)
        solids, in_can = solids_sprayed(product, variant), solids_in_can(product, variant)
        if any(isinstance(share, NotKnown) and share.is_fault for share in (solids, in_can)):
            continue  # the rules on solids say so, at the product
        if isinstance(solids, NotKnown):
            what = f"the target WFT of {layer.id} cannot be assessed: the product {product.id} states no volume solids without propellant"
            yield Problem(path, what, "write solids.sprayed of the product", severity=NOTE)
            continue
        limits = [held for limit in ("min", "max") if (held := film_limit(system, layer, spec, limit)) is not None]
        film = _dried(layer, layer.wet_target, solids)
        if _inside(film, limits):
            continue
        from_can = _dried(layer, layer.wet_target, in_can) if not isinstance(in_can, NotKnown) else film
        hint = (
            "; the target was calculated with the volume solids of the can contents"
            if _inside(from_can, limits)
            else ""
        )
        told = " to ".join(show(held.value) for held in limits)
        what = f"target wet film thickness (WFT) {_shown(layer.wet_target)} gives a DFT of {_shown(film)}; DFT limits of the coat {layer.id}: {told}{hint}"
        yield Problem(path, what)


def _dried(layer: Layer, wet: Quantity | Range, solids: Source) -> Quantity | Range:
    """The DFT of all cross coats, each applied at the target WFT.

    Of a range of cross coats the applicator takes those that fit: the thinnest target is reckoned with the most of them, the
    thickest with the fewest.
    """
    aimed, number = as_range(wet), _number(layer)
    low = _film(layer, aimed.low, number.high, solids)
    high = _film(layer, aimed.high, number.low, solids)
    if low is not None and high is not None and low >= high:
        return low
    return Range("thickness", low, high)


def _number(layer: Layer) -> Count:
    return next((held for held in (layer.passes, layer.coats) if held is not None and held.low > 0), Count(1, 1))


def _film(layer: Layer, wet: Quantity | None, number: int | None, solids: Source) -> Quantity | None:
    if wet is None or number is None:
        return None
    one = dry_film(f"dry-{layer.id}", wet, solids, layer.thinner)
    return Quantity.of("thickness", one.number * number, one.unit)


def _inside(film: Quantity | Range, limits: Sequence[Film]) -> bool:
    ends = as_range(film)
    return all(
        ends.low is None or held.value <= ends.low
        if held.path[-1] == "min"
        else ends.high is None or ends.high <= held.value
        for held in limits
    )


def _shown(value: Quantity | Range) -> str:
    return show(value) if isinstance(value, Quantity) else show_range(value)
