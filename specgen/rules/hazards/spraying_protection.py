"""HAZ004 Personal protective equipment for application is stated

Checks
    Every product that is sprayed has a protection entry for spraying, with respiratory protection, gloves and eye protection each named. A product applied by brush, roller, dipping or trowel alone has gloves and eye protection named for work with the wet product. Where words stand there that none is needed, it is a warning.
Why
    Most injuries from these products come from the spray mist; a document that leaves the mask to chance does harm.
Passes
    products.base.hazards.protection: [{id: all, task: any, respiratory: "half mask A2P3, EN 140", gloves: nitrile, eyes: goggles}]

    products.base.hazards.protection: [{id: mix, task: mixing, gloves: nitrile}, {id: a, task: spraying, respiratory: "half mask AXP3, EN 140", gloves: nitrile}, {id: b, task: any, eyes: goggles}]

    products.barrier.application.methods: [brush, roller]
    products.barrier.hazards.protection: [{id: mix, task: mixing, gloves: "nitrile 0.4 mm, EN ISO 374-1, splash only", eyes: "goggles, EN ISO 16321-1"}]

    systems.chassis.layers.barrier.method: brush
    products.barrier.hazards.protection: [{id: all, task: any, gloves: "nitrile 0.4 mm, EN ISO 374-1, splash only", eyes: "goggles, EN ISO 16321-1"}]
Fails
    products.barrier.application.methods: [brush, roller]
    products.barrier.hazards.protection: [{id: mix, task: mixing, gloves: "nitrile 0.4 mm, EN ISO 374-1, splash only"}]    # at products.barrier.hazards.protection.mix.eyes

    products.barrier.application.methods: [brush, airless]
    products.barrier.hazards.protection: [{id: mix, task: mixing, gloves: "nitrile 0.4 mm, EN ISO 374-1, splash only", eyes: "goggles, EN ISO 16321-1"}]    # at products.barrier.hazards.protection

    products.barrier.application.methods: [brush]
    without products.barrier.hazards.protection    # at products.barrier.hazards.protection

    without products.base.hazards.protection    # at products.base.hazards.protection

    without products.base.hazards.protection.spray.respiratory    # at products.base.hazards.protection.spray.respiratory

    products.base.hazards.protection: [{id: mix, task: mixing, respiratory: "half mask AXP3", gloves: nitrile, eyes: goggles}, {id: a, task: spraying, respiratory: "half mask AXP3, EN 140", eyes: goggles}]    # at products.base.hazards.protection.a.gloves

    Given second good
    without products.gloss.hazards.protection.spray.eyes    # at products.gloss.hazards.protection.spray.eyes

    Given second good
    products.touch-up.hazards.protection: [{id: sand, task: sanding, respiratory: FFP2, gloves: nitrile, eyes: goggles}]    # at products.touch-up.hazards.protection

    products.base.hazards.protection: [{id: a, task: spraying, respiratory: "half mask AXP3, EN 140", gloves: nitrile}, {id: b, task: any, skin: overall}]    # at products.base.hazards.protection.a.eyes

    products.base.hazards.protection.spray.eyes: None needed    # warning at products.base.hazards.protection.spray.eyes
To put right
    Take respiratory, hand and eye protection for the application from section 8 of the current safety data sheet.
"""

import re

from specgen.facts.product.declared import spraying, wet_work
from specgen.facts.product.sprayed import is_sprayed
from specgen.rules.kit import ERROR, WARNING, Basis, Problem, Problems, Product, Spec, cite, date, rule

_DENIED = re.compile(
    r"^(?:none|no(?:t)? (?:needed|required|necessary|protection))\b(?!.*\b(?:if|when|where|while|with)\b)", re.I
)
_NAMES = {"respiratory": "respiratory protection", "gloves": "gloves", "eyes": "eye protection"}


@rule(
    "HAZ004",
    on=Product,
    severity=ERROR,
    source=cite("REACH", "Annex II, 8.2.2", Basis.REGULATION),
    waivable=False,
)
def spraying_protection(product: Product, spec: Spec, on: date) -> Problems:
    sprayed, hazards = is_sprayed(product, spec), product.hazards
    entries = () if hazards is None else spraying(hazards) if sprayed else wet_work(hazards)
    task = "spraying" if sprayed else "work with the wet product"
    if not entries:
        what = f"the product {product.id} states no protective equipment for {task}"
        yield Problem(("hazards", "protection"), what)
        return
    for need in ("respiratory", "gloves", "eyes") if sprayed else ("gloves", "eyes"):
        if all(getattr(entry, need) is None for entry in entries):
            what = f"the product {product.id} states no {_NAMES[need]} for {task}"
            yield Problem(("hazards", "protection", entries[0].id, need), what)
        elif denied := [entry for entry in entries if _DENIED.search(getattr(entry, need) or "")]:
            what = f"the product {product.id} says of {_NAMES[need]} for {task}: {getattr(denied[0], need)}"
            yield Problem(("hazards", "protection", denied[0].id, need), what, severity=WARNING)
