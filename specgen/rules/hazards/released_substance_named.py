"""HAZ035 What a blocked hardener lets off is named

Checks
    A can with blocked hardener names the ketone or aldehyde that leaves the film while it cures.
Why
    It goes into the air of the drying room and into the VOC, and some of these substances carry hazards of their own.
Passes
    products.primer.hazards.cure_releases: 4-methyl-2-pentanone
Fails
    without products.primer.hazards.cure_releases    # at products.primer.hazards.cure_releases

    without products.clear.hazards.cure_releases    # at products.clear.hazards.cure_releases
To put right
    Ask the maker of the hardener, name the substance and count it in the VOC.
"""

from specgen.model.product import CuringKind
from specgen.rules.kit import PRACTICE, WARNING, Problem, Problems, Product, Spec, date, rule


@rule("HAZ035", on=Product, severity=WARNING, source=PRACTICE)
def released_substance_named(product: Product, spec: Spec, on: date) -> Problems:
    if product.hazards is None or product.curing is not CuringKind.BLOCKED_AEROSOL:
        return
    if product.hazards.cure_releases is None:
        yield Problem(("hazards", "cure_releases"), f"what the blocked hardener of {product.id} lets off is not named")
