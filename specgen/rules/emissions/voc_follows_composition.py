"""VOC002 VOC content agrees with the composition

Checks
    Where composition and density are given: the stated VOC content against the sum of solvents and propellant.
Why
    A VOC content without the propellant appears about half of what it is.
Passes
    products.primer.voc.density: 0.883 g/mL

    products.primer.voc: {content: 380 g/L, categories: [{id: eu, jurisdiction: EU, category: e}]}

    products.primer.voc.density: 0.883 g/mL
    products.primer.voc.content: 624.281 g/L

    products.primer.voc.density: 0.883 g/mL
    products.primer.voc.content: 611.919 g/L

    Given second good
    products.touch-up.voc.density: 0.8 g/mL
Fails
    products.primer.voc.density: 0.883 g/mL    # at products.primer.voc.content
    products.primer.voc.content: 380 g/L

    Given second good
    products.touch-up.voc: {content: 300 g/L, density: 0.8 g/mL, reactivity: 1, factors: "2008", categories: [{id: us, jurisdiction: US, category: FCP}]}    # at products.touch-up.voc.content

    products.primer.voc.density: 0.883 g/mL
    products.primer.voc.content: 624.282 g/L    # at products.primer.voc.content

    products.primer.voc.density: 0.883 g/mL
    products.primer.voc.content: 611.918 g/L    # at products.primer.voc.content
To put right
    Recalculate the VOC content, propellant included.
"""

from fractions import Fraction

from specgen.facts.product.figures import voc_content
from specgen.rules.kit import NOTE, PRACTICE, WARNING, Problem, Problems, Product, Spec, date, rule, table
from specgen.trade.known import NotKnown


@rule("VOC002", on=Product, severity=WARNING, source=PRACTICE)
def voc_follows_composition(product: Product, spec: Spec, on: date) -> Problems:
    stated = product.voc
    if stated is None or stated.content is None:
        return
    computed = voc_content(product)
    if isinstance(computed, NotKnown) and not computed.is_fault:
        return
    if isinstance(computed, NotKnown):
        yield Problem(
            ("voc", "content"), f"the VOC content of {product.id} cannot be calculated: {computed.why}", severity=NOTE
        )
        return
    rows = table("hazard_tolerances")
    own = Fraction(rows.row("id", "voc")["figure"])
    share = computed.number * Fraction(rows.row("id", "voc_share")["figure"]) / 100
    if abs(stated.content.to("g/L") - computed.number) > max(own, share):
        what = f"the stated VOC content of {product.id} is {stated.content}; its composition gives {computed.printed()}"
        yield Problem(("voc", "content"), what)
