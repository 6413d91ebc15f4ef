"""HAZ035 The substance released by a blocked hardener is named

Checks
    A can with a blocked hardener names the ketone or aldehyde that is released during cure.
Why
    It enters the air of the drying room and counts towards the VOC, and some of these substances have hazards of their own.
Passes
    products.primer.hazards.cure_releases: 4-methyl-2-pentanone
Fails
    without products.primer.hazards.cure_releases    # at products.primer.hazards.cure_releases

    without products.clear.hazards.cure_releases    # at products.clear.hazards.cure_releases
To put right
    Ask the manufacturer of the hardener, name the substance and include it in the VOC.
"""

from specgen.model.product import CuringKind
from specgen.rules.kit import PRACTICE, WARNING, Problem, Problems, Product, Spec, date, rule


@rule("HAZ035", on=Product, severity=WARNING, source=PRACTICE)
def released_substance_named(product: Product, spec: Spec, on: date) -> Problems:
    if product.hazards is None or product.curing is not CuringKind.BLOCKED_AEROSOL:
        return
    if product.hazards.cure_releases is None:
        yield Problem(
            ("hazards", "cure_releases"), f"the substance released by the blocked hardener of {product.id} is not named"
        )
