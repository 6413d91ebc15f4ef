"""AIR001 Air of a product is not judged by the explosive limit alone

Checks
    What a product says of ventilation: where it names the explosive limit, it also names exposure or breathing protection.
Why
    A quarter of the explosive limit of xylene is about twenty times what may be breathed.
Passes
    products.base.hazards.ventilation: Below a quarter of the explosive limit, and breathing protection at any flow.

    products.base.hazards.ventilation: Keep a window open.
Fails
    products.base.hazards.ventilation: Keep the vapour below a quarter of the explosive limit.    # at products.base.hazards.ventilation

    Given second good
    products.gloss.hazards.ventilation: Keep the vapour below a quarter of the explosive limit.    # at products.gloss.hazards.ventilation
To put right
    State what the limits of exposure ask for and the breathing protection beside it.
"""

from specgen.facts.job.air_wording import explosion_alone
from specgen.rules.kit import ERROR, Problem, Problems, Product, Spec, cite, date, rule


@rule(
    "AIR001",
    on=Product,
    severity=ERROR,
    source=cite("OSHA-LFL-READING"),
    waivable=False,
)
def product_air_for_lungs(product: Product, spec: Spec, on: date) -> Problems:
    stated = product.hazards.ventilation if product.hazards is not None else None
    if stated is not None and explosion_alone(stated):
        what = f"the ventilation of {product.id} speaks of the explosive limit and not of what may be breathed"
        yield Problem(("hazards", "ventilation"), what)
