"""CUR002 A liquid two-pack states its pot life

Checks
    Every liquid two-pack states a pot life with its temperature.
Why
    After its pot life mixed paint still sprays and looks sound, but does not adhere or cure as tested.
Passes
    products.barrier.pot_life: {time: 6 h, air: 20 degC}

    Given second good
Fails
    without products.barrier.pot_life    # at products.barrier.pot_life

    Given second good
    without products.gloss.pot_life    # at products.gloss.pot_life
To put right
    Write the pot life, its temperature and the mixed volume it applies to, from the product's own tests.
"""

from specgen.model.product import CuringKind
from specgen.rules.kit import ERROR, LOGIC, Problem, Problems, Product, Spec, date, rule


@rule("CUR002", on=Product, severity=ERROR, source=LOGIC)
def pot_life_missing(product: Product, spec: Spec, on: date) -> Problems:
    if product.curing is CuringKind.LIQUID_TWO_PACK and product.pot_life is None:
        yield Problem(("pot_life",), f"the liquid two-pack {product.id} states no pot life")
