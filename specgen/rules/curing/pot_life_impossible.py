"""CUR001 Only a liquid two-pack has a pot life

Checks
    A pot life on a product that is not a liquid two-pack.
Why
    Nothing is mixed in a single-compartment can, so there is no pot life; one that is stated makes people throw away good cans, or trust a figure that means nothing. A capsule can has a usable life after activation instead.
Passes
    products.barrier.pot_life: {time: 3 h, air: 23 degC, volume: 1 L}

    Given second good
Fails
    products.primer.pot_life: {time: 3 h, air: 23 degC}    # at products.primer.pot_life

    Given second good
    products.touch-up.pot_life: {time: 3 h, air: 77 degF}    # at products.touch-up.pot_life
To put right
    Delete the pot life; for a capsule can write application.activation.usable_for.
"""

from specgen.model.product import CuringKind
from specgen.rules.kit import ERROR, LOGIC, Problem, Problems, Product, Spec, date, rule


@rule("CUR001", on=Product, severity=ERROR, source=LOGIC)
def pot_life_impossible(product: Product, spec: Spec, on: date) -> Problems:
    if product.curing is not CuringKind.LIQUID_TWO_PACK and product.pot_life is not None:
        yield Problem(("pot_life",), f"a pot life is stated, but the curing type is {product.curing}")
