"""LAY012 The generic type of a product is named

Checks
    Each product whose generic type is stated as not named.
Why
    Overcoating, existing coatings, solvents, sunlight, heat, minimum preparation and the film of a corrosivity category are assessed by the generic type. Where it is not named none of this is assessed for the product, and the documents do not speak of it.
Passes
    products.barrier.binder: coal_tar_epoxy    # also HAZ020 at products.barrier.hazards.supplemental
Fails
    products.base.binder: not-named    # at products.base.binder    # also HAZ018 note at products.base.hazards.supplemental    # also HAZ023 note at products.base.hazards.supplemental

    products.primer.binder: not-named    # at products.primer.binder    # also HAZ018 note at products.primer.hazards.supplemental

    Given second good
    products.touch-up.binder: not-named    # at products.touch-up.binder
    products.mastic.binder: not-named    # at products.mastic.binder
To put right
    Ask the manufacturer for the generic type; until then keep to the overcoating intervals, preparation and limits of the data sheet.
"""

from specgen.facts.pairs.families import NOT_NAMED
from specgen.rules.kit import LOGIC, NOTE, Problem, Problems, Product, Spec, date, rule


@rule("LAY012", on=Product, severity=NOTE, source=LOGIC)
def generic_type_named(product: Product, spec: Spec, on: date) -> Problems:
    if product.binder == NOT_NAMED:
        what = (
            f"the generic type of {product.id} is not named, so nothing that depends on it is assessed for this product"
        )
        yield Problem(("binder",), what)
