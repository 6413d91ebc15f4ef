"""HAZ035 What a blocked hardener lets off is named

Checks
    A can with blocked hardener names the ketone or aldehyde that leaves the film while it cures.
Why
    It goes into the air of the drying room and into the VOC, and some of these substances carry hazards of their own.
Passes
    products.primer.hazards.released: 4-methyl-2-pentanone
Fails
    without products.primer.hazards.released    # at products.primer.hazards.released
To put right
    Ask the maker of the hardener, name the substance and count it in the VOC.
"""

from __future__ import annotations

from collections.abc import Iterator

from specgen.findings import Severity
from specgen.model.product import CuringKind, Product
from specgen.model.senses import Concern
from specgen.model.spec import Spec
from specgen.rules.declare import Problem, rule
from specgen.standards.citations import PRACTICE


@rule("HAZ035", on=Product, severity=Severity.WARNING, concern=Concern.SAFETY, source=PRACTICE)
def released_substance_named(product: Product, spec: Spec) -> Iterator[Problem]:
    if product.hazards is None or product.curing is not CuringKind.BLOCKED_AEROSOL:
        return
    if product.hazards.released is None:
        yield Problem(("hazards", "released"), f"what the blocked hardener of {product.id} lets off is not named")
