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

from fractions import Fraction

from specgen.facts.product.emissions import voc_of
from specgen.rules.kit import NOTE, PRACTICE, WARNING, Problem, Problems, Product, Spec, date, rule, table
from specgen.trade.working import WorkingError


@rule("VOC002", on=Product, severity=WARNING, source=PRACTICE)
def voc_follows_composition(product: Product, spec: Spec, on: date) -> Problems:
    stated = product.voc
    if stated is None or stated.content is None or stated.density is None or not product.composition:
        return
    try:
        worked_out = voc_of(product, stated.density)
    except WorkingError as error:
        yield Problem(("voc", "content"), f"the VOC of {product.id} cannot be worked out: {error.what}", severity=NOTE)
        return
    rows = table("hazard_tolerances")
    own = Fraction(rows.row("id", "voc")["figure"])
    share = worked_out.number * Fraction(rows.row("id", "voc_share")["figure"]) / 100
    if abs(stated.content.to("g/L") - worked_out.number) > max(own, share):
        what = f"{product.id} states {stated.content} of VOC, its composition gives {worked_out.printed()}"
        yield Problem(("voc", "content"), what)
