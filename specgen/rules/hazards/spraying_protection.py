"""HAZ004 Personal protective equipment for spraying is stated

Checks
    Every product has a protection entry for spraying, with respiratory protection, gloves and eye protection each named.
Why
    Most injuries from these products come from the spray mist; a document that leaves the mask to chance does harm.
Passes
    products.base.hazards.protection: [{id: all, task: any, respiratory: "half mask A2P3, EN 140", gloves: nitrile, eyes: goggles}]

    products.base.hazards.protection: [{id: mix, task: mixing, gloves: nitrile}, {id: a, task: spraying, respiratory: "half mask AXP3, EN 140", gloves: nitrile}, {id: b, task: any, eyes: goggles}]
Fails
    without products.base.hazards.protection    # at products.base.hazards.protection

    without products.base.hazards.protection.spray.respiratory    # at products.base.hazards.protection.spray.respiratory

    products.base.hazards.protection: [{id: mix, task: mixing, respiratory: "half mask AXP3", gloves: nitrile, eyes: goggles}, {id: a, task: spraying, respiratory: "half mask AXP3, EN 140", eyes: goggles}]    # at products.base.hazards.protection.a.gloves

    Given second good
    without products.gloss.hazards.protection.spray.eyes    # at products.gloss.hazards.protection.spray.eyes

    Given second good
    products.touch-up.hazards.protection: [{id: sand, task: sanding, respiratory: FFP2, gloves: nitrile, eyes: goggles}]    # at products.touch-up.hazards.protection

    products.base.hazards.protection: [{id: a, task: spraying, respiratory: "half mask AXP3, EN 140", gloves: nitrile}, {id: b, task: any, skin: overall}]    # at products.base.hazards.protection.a.eyes
To put right
    Take respiratory, hand and eye protection for spraying from section 8 of the current safety data sheet.
"""

from specgen.model.hazards import Task
from specgen.rules.kit import ERROR, Basis, Problem, Problems, Product, Spec, cite, date, rule

_SPRAYING = {Task.SPRAYING, Task.ANY}
_NAMES = {"respiratory": "respiratory protection", "gloves": "gloves", "eyes": "eye protection"}


@rule(
    "HAZ004",
    on=Product,
    severity=ERROR,
    source=cite("REACH", "Annex II, 8.2.2", Basis.REGULATION),
    waivable=False,
)
def spraying_protection(product: Product, spec: Spec, on: date) -> Problems:
    entries = [entry for entry in (product.hazards.protection if product.hazards else ()) if entry.task in _SPRAYING]
    if not entries:
        yield Problem(
            ("hazards", "protection"), f"the product {product.id} states no protective equipment for spraying"
        )
        return
    for need in ("respiratory", "gloves", "eyes"):
        if all(getattr(entry, need) is None for entry in entries):
            yield Problem(
                ("hazards", "protection", entries[0].id, need),
                f"the product {product.id} states no {_NAMES[need]} for spraying",
            )
