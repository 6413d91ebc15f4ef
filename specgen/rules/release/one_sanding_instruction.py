"""REL007 A coat has one instruction for sanding

Checks
    What is said of sanding each coat before the next: before_next does not forbid what abraded_with or sanding_removes order, and does not order dry sanding where abraded_with orders wet, or the other way round; neither these nor the action for a missed interval order dry sanding of a product that states a time for wet sanding alone.
Why
    Of two instructions the shop follows the one that is quicker; sanded too soon or dry against its data a film clogs the paper and its dust does harm, not sanded at all the next coat peels.
Passes
    systems.cab.layers.primer.abraded_with: P400
    systems.cab.layers.primer.before_next: Dry-sand level. Do not sand through to the metal.

    systems.cab.layers.primer.abraded_with: P800 wet
    systems.cab.layers.primer.before_next: Wet-sand, rinse and allow to dry.

    systems.cab.layers.primer.before_next: Do not sand. Wipe with a tack cloth only.

    products.primer.sandable_after: [{id: wet, sanding: wet, time: 30 min, air: 15 degC}]
    systems.cab.layers.primer.abraded_with: P800 wet
Fails
    systems.cab.layers.primer.abraded_with: P400
    systems.cab.layers.primer.before_next: Do not sand. Wipe with a tack cloth only.    # at systems.cab.layers.primer.before_next

    systems.cab.layers.primer.abraded_with: P800 wet
    systems.cab.layers.primer.before_next: Dry-sand until level.    # at systems.cab.layers.primer.before_next

    systems.cab.layers.primer.abraded_with: P400 dry
    systems.cab.layers.primer.before_next: Wet-sand until level.    # at systems.cab.layers.primer.before_next

    products.primer.sandable_after: [{id: wet, sanding: wet, time: 30 min, air: 15 degC}]
    systems.cab.layers.primer.abraded_with: P400 dry    # at systems.cab.layers.primer.abraded_with

    products.primer.sandable_after: [{id: wet, sanding: wet, time: 30 min, air: 15 degC}]
    systems.cab.layers.primer.if_exceeded: Dry-sand with P400 and dust off.    # at systems.cab.layers.primer.if_exceeded

    Given second good
    systems.deck.layers.second.before_next: Never abrade.    # at systems.deck.layers.second.before_next
To put right
    Keep the instruction of the product data and take out the other one.
"""

import re

from specgen.facts.pairs.answers import WORK, sanding_ordered
from specgen.model.drying import Sanding
from specgen.rules.kit import LOGIC, WARNING, Layer, Problem, Problems, Spec, System, date, rule

# `Do not sand through to the metal` forbids no sanding.
_FORBIDS = re.compile(rf"\b(?:(?:do not|never|without) (?:dry-|wet-)?{WORK}|no {WORK})\s*(?:[.;,]|$)", re.IGNORECASE)


@rule("REL007", on=System, severity=WARNING, source=LOGIC)
def one_sanding_instruction(system: System, spec: Spec, on: date) -> Problems:
    for layer in system.layers:
        path = ("layers", layer.id)
        ordered = layer.abraded_with or (str(layer.sanding_removes) if layer.sanding_removes is not None else "")
        if ordered and _FORBIDS.search(layer.before_next or ""):
            what = f"before_next forbids sanding {layer.id}, and it is sanded with or by {ordered}"
            yield Problem((*path, "before_next"), what)
        words, paper = sanding_ordered(layer.before_next), sanding_ordered(layer.abraded_with)
        if words is not None and paper is not None and words is not paper:
            what = f"before_next orders sanding {layer.id} {words}, abraded_with {paper}"
            yield Problem((*path, "before_next"), what)
        yield from _against_the_product(layer, spec)


def _against_the_product(layer: Layer, spec: Spec) -> Problems:
    stated = {entry.sanding for entry in spec.product_of(layer).sandable_after}
    if stated != {Sanding.WET}:
        return
    for key in ("before_next", "abraded_with", "if_exceeded"):
        if sanding_ordered(getattr(layer, key)) is Sanding.DRY:
            what = f"{key} orders sanding {layer.id} dry, and {layer.product} states a time for wet sanding alone"
            yield Problem(("layers", layer.id, key), what)
            return
