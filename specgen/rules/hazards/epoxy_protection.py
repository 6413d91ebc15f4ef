"""HAZ024 Protection for spraying epoxy covers skin and airways

Checks
    A product containing epoxy names gloves, protective clothing and respiratory protection for spraying.
Why
    Spray mist of uncured epoxy settles on every area of exposed skin.
Passes
    products.primer.hazards.protection.spray.skin: overall with hood

    products.primer.hazards.protection.spray: {id: spray, task: spraying, respiratory: "half mask AXP3, EN 140 and EN 14387", gloves: "nitrile 0.4 mm, EN ISO 374-1, splash only", eyes: goggles}
    products.primer.hazards.protection.all: {id: all, task: any, gloves: "nitrile 0.4 mm, EN ISO 374-1, splash only", skin: overall}

    without products.primer.hazards.protection.spray.skin
    products.primer.hazards.epoxy_up_to_700: no
    products.primer.hazards.supplemental: []

    without products.base.hazards.protection.spray.skin
Fails
    without products.primer.hazards.protection.spray.skin    # at products.primer.hazards.protection.spray.skin

    Given second good
    without products.mastic.hazards.protection.spray.skin    # at products.mastic.hazards.protection.spray.skin
To put right
    Take all three from section 8 of the safety data sheet.
"""

from specgen.facts.product.declared import spraying
from specgen.facts.product.hazard_facts import epoxy_in
from specgen.facts.product.sprayed import is_sprayed
from specgen.rules.kit import WARNING, Basis, Problem, Problems, Product, Spec, cite, date, rule


@rule(
    "HAZ024",
    on=Product,
    severity=WARNING,
    source=cite("ARB-MED-VV", "annex, part 1", Basis.REGULATION),
)
def epoxy_protection(product: Product, spec: Spec, on: date) -> Problems:
    if product.hazards is None or not epoxy_in(product) or product.hazards.epoxy_up_to_700 is False:
        return
    if not is_sprayed(product, spec):
        return
    for entry in spraying(product.hazards)[:1]:
        if all(other.skin is None for other in spraying(product.hazards)):
            path = ("hazards", "protection", entry.id, "skin")
            yield Problem(path, f"{product.id} contains epoxy but states no protective clothing for spraying")
