"""HAZ035 What a blocked hardener lets off is named

Checks
    A can with blocked hardener names the ketone or aldehyde that leaves the film while it cures.
Why
    It goes into the air of the drying room and into the VOC, and some of these substances carry hazards of their own.
Passes
    products.primer.hazards.released: 4-methyl-2-pentanone
Fails
    without products.primer.hazards.released    # at products.primer.hazards.released

    without products.clear.hazards.released    # at products.clear.hazards.released
To put right
    Ask the maker of the hardener, name the substance and count it in the VOC.
"""

from specgen.model.product import CuringKind
from specgen.rules.kit import PRACTICE, WARNING, Problem, Problems, Product, Spec, date, rule


@rule("HAZ035", on=Product, severity=WARNING, source=PRACTICE)
def released_substance_named(product: Product, spec: Spec, on: date) -> Problems:
    if product.hazards is None or product.curing is not CuringKind.BLOCKED_AEROSOL:
        return
    if product.hazards.released is None:
        yield Problem(("hazards", "released"), f"what the blocked hardener of {product.id} lets off is not named")
