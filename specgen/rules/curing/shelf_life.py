"""CUR005 A product states its shelf life

Checks
    Every product states a shelf life.
Why
    Reactive paint ages in the can; without a shelf life an old batch cannot be rejected.
Passes
    products.primer.shelf_life: 2 years
Fails
    without products.primer.shelf_life    # at products.primer.shelf_life

    Given second good
    without products.touch-up.shelf_life    # at products.touch-up.shelf_life
To put right
    Write the shelf life of the unopened pack from the product's own tests.
"""

from specgen.rules.kit import LOGIC, WARNING, Problem, Problems, Product, Spec, date, rule


@rule("CUR005", on=Product, severity=WARNING, source=LOGIC)
def shelf_life(product: Product, spec: Spec, on: date) -> Problems:
    if product.shelf_life is None:
        yield Problem(("shelf_life",), f"the product {product.id} states no shelf life")
