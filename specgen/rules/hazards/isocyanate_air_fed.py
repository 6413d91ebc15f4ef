"""HAZ021 Isocyanate is sprayed with air-fed breathing apparatus

Checks
    Where isocyanate is sprayed, the respiratory protection named first is air-fed (EN 14594, supplied air, self-contained). A filter mask, alone or as an alternative, is refused.
Why
    A filter gives no warning when isocyanate breaks through, and one day of exposure can end a working life.
Passes
    products.clear.hazards.protection.spray.respiratory: supplied-air hood, EN 14594 class 4; a filter mask does not protect

    Given second good
    products.gloss.hazards.protection.mix: {id: mix, task: mixing, respiratory: half mask A2, gloves: "nitrile 0.4 mm, EN ISO 374-1, splash only"}

    Given second good
    products.gloss.application.methods: [brush, roller]
    products.gloss.hazards.protection: [{id: all, task: any, respiratory: "half mask A2, EN 14387", gloves: "nitrile 0.4 mm, EN ISO 374-1, splash only", eyes: "goggles, EN ISO 16321-1", skin: overall}]
Fails
    products.clear.hazards.protection.spray.respiratory: half mask A2P3, EN 14387    # at products.clear.hazards.protection.spray.respiratory

    products.clear.hazards.protection.spray.respiratory: half mask AXP3; supplied air in narrow spaces    # at products.clear.hazards.protection.spray.respiratory

    Given second good
    products.gloss.hazards.protection.more: {id: more, task: any, respiratory: half mask AXP3, gloves: "nitrile 0.4 mm, EN ISO 374-1, splash only"}    # at products.gloss.hazards.protection.more.respiratory

    products.clear.hazards.protection: [{id: more, task: any, respiratory: half mask AXP3, gloves: "nitrile 0.4 mm, EN ISO 374-1, splash only"}, {id: spray, task: spraying, respiratory: "air-fed half mask, EN 14594", eyes: goggles, skin: overall}]    # at products.clear.hazards.protection.more.respiratory    # also HAZ030 at products.clear.hazards.protection.spray.gloves
To put right
    State air-fed breathing apparatus, as in: air-fed visor, EN 14594 class 4.
"""

from specgen.facts.product.declared import is_air_fed, spraying
from specgen.facts.product.hazard_facts import isocyanates_in
from specgen.facts.product.sprayed import is_sprayed
from specgen.rules.kit import ERROR, Problem, Problems, Product, Spec, cite, date, rule, table


@rule(
    "HAZ021",
    on=Product,
    severity=ERROR,
    source=cite("HSE-BODYSHOP", "respiratory protection"),
    waivable=False,
)
def isocyanate_air_fed(product: Product, spec: Spec, on: date) -> Problems:
    if product.hazards is None or not isocyanates_in(product) or not is_sprayed(product, spec):
        return
    row = table("protective_equipment").row("id", "breath_isocyanate")
    for entry in spraying(product.hazards):
        if entry.respiratory is not None and not is_air_fed(entry.respiratory):
            what = f"{product.id} contains isocyanate; respiratory protection stated for spraying: {entry.respiratory}; required: {row['need']}"
            yield Problem(("hazards", "protection", entry.id, "respiratory"), what)
