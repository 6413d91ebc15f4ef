"""AIR001 Air of a product is not judged by the explosive limit alone

Checks
    What a product says of ventilation: where it names the explosive limit, it also names exposure or breathing protection.
Why
    A quarter of the explosive limit of xylene is about twenty times what may be breathed.
Passes
    products.base.hazards.ventilation: Below a quarter of the explosive limit, and breathing protection at any flow.
Fails
    products.base.hazards.ventilation: Keep the vapour below a quarter of the explosive limit.    # at products.base.hazards.ventilation
To put right
    State what the limits of exposure ask for and the breathing protection beside it.
"""

from __future__ import annotations

from collections.abc import Iterator

from specgen.findings import Severity
from specgen.model.product import Product
from specgen.model.senses import Concern
from specgen.model.spec import Spec
from specgen.rules.air.wording import explosion_alone
from specgen.rules.declare import Problem, rule
from specgen.standards.citations import cite


@rule(
    "AIR001",
    on=Product,
    severity=Severity.ERROR,
    concern=Concern.SAFETY,
    source=cite("OSHA-LFL-READING"),
    waivable=False,
)
def product_air_for_lungs(product: Product, spec: Spec) -> Iterator[Problem]:
    stated = product.hazards.ventilation if product.hazards is not None else None
    if stated is not None and explosion_alone(stated):
        what = f"the ventilation of {product.id} speaks of the explosive limit and not of what may be breathed"
        yield Problem(("hazards", "ventilation"), what)
