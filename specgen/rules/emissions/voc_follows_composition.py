"""VOC002 The VOC content follows from the composition

Checks
    Where composition and density are given: the stated VOC content against the sum of solvents and propellant.
Why
    A content that leaves the propellant out looks half as high as it is.
Passes
    products.primer.voc.density: 0.883 g/mL
Fails
    products.primer.voc.density: 0.883 g/mL    # at products.primer.voc.content
    products.primer.voc.content: 380 g/L
To put right
    Work it out anew, propellant included.
"""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction

from specgen.findings import Severity
from specgen.model.product import Product
from specgen.model.senses import Concern
from specgen.model.spec import Spec
from specgen.plan.emissions import voc_of
from specgen.rules.declare import Problem, rule
from specgen.standards.citations import PRACTICE
from specgen.standards.tables import table
from specgen.trade.working import WorkingError


@rule("VOC002", on=Product, severity=Severity.WARNING, concern=Concern.SAFETY, source=PRACTICE)
def voc_follows_composition(product: Product, spec: Spec) -> Iterator[Problem]:
    stated = product.voc
    if stated is None or stated.content is None or stated.density is None or not product.composition:
        return
    try:
        worked_out = voc_of(product, stated.density)
    except WorkingError as error:
        yield Problem(
            ("voc", "content"), f"the VOC of {product.id} cannot be worked out: {error.what}", severity=Severity.NOTE
        )
        return
    rows = table("hazard_tolerances")
    own = Fraction(rows.row("id", "voc")["figure"])
    share = worked_out.number * Fraction(rows.row("id", "voc_share")["figure"]) / 100
    if abs(stated.content.to("g/L") - worked_out.number) > max(own, share):
        what = f"{product.id} states {stated.content} of VOC, its composition gives {worked_out.printed()}"
        yield Problem(("voc", "content"), what)
