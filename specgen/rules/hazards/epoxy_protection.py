"""HAZ024 Sprayed epoxy is kept off skin and lungs

Checks
    A product with epoxy names gloves, clothing and breathing protection for spraying.
Why
    Spray mist of uncured epoxy settles on every bare spot.
Passes
    products.primer.hazards.protection.spray.skin: overall with hood
Fails
    without products.primer.hazards.protection.spray.skin    # at products.primer.hazards.protection.spray.skin
To put right
    Take all three from section 8 of the safety data sheet.
"""

from __future__ import annotations

from collections.abc import Iterator

from specgen.findings import Severity
from specgen.model.product import Product
from specgen.model.senses import Concern
from specgen.model.spec import Spec
from specgen.plan.hazard_facts import epoxy_in
from specgen.rules.declare import Problem, rule
from specgen.rules.hazards.declared import spraying
from specgen.standards.citations import Basis, cite


@rule(
    "HAZ024",
    on=Product,
    severity=Severity.WARNING,
    concern=Concern.SAFETY,
    source=cite("ARB-MED-VV", "annex, part 1", Basis.REGULATION),
)
def epoxy_protection(product: Product, spec: Spec) -> Iterator[Problem]:
    if product.hazards is None or not epoxy_in(product) or product.hazards.epoxy_up_to_700 is False:
        return
    for entry in spraying(product.hazards)[:1]:
        if all(other.skin is None for other in spraying(product.hazards)):
            path = ("hazards", "protection", entry.id, "skin")
            yield Problem(path, f"{product.id} holds epoxy and names no clothing for spraying")
