"""AIR001 Ventilation of a product is not assessed by the explosive limit alone

Checks
    The ventilation statement of a product: where it names the explosive limit, it also names exposure limits or respiratory protection.
Why
    A quarter of the lower explosive limit of xylene is about twenty times the concentration that may be breathed.
Passes
    products.base.hazards.ventilation: Below a quarter of the explosive limit, and breathing protection at any flow.

    products.base.hazards.ventilation: Keep a window open.
Fails
    products.base.hazards.ventilation: Keep the vapour below a quarter of the explosive limit.    # at products.base.hazards.ventilation

    Given second good
    products.gloss.hazards.ventilation: Keep the vapour below a quarter of the explosive limit.    # at products.gloss.hazards.ventilation
To put right
    State the fresh-air flow that the occupational exposure limits require, and the respiratory protection with it.
"""

from specgen.facts.job.air_wording import explosion_alone
from specgen.rules.kit import ERROR, LOGIC, Problem, Problems, Product, Spec, date, rule


@rule(
    "AIR001",
    on=Product,
    severity=ERROR,
    source=LOGIC,
    waivable=False,
)
def product_air_for_lungs(product: Product, spec: Spec, on: date) -> Problems:
    stated = product.hazards.ventilation if product.hazards is not None else None
    if stated is not None and explosion_alone(stated):
        what = f"the ventilation of {product.id} refers only to the explosive limit and not to exposure or respiratory protection"
        yield Problem(("hazards", "ventilation"), what)
