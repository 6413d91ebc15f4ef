"""VOC004 Reactivity is within the federal limit of the United States

Checks
    Where the law of the United States applies: a can states its reactivity with the set of factors, and the reactivity is within the lowest limit of the categories named. The limits of 2008 are not verified against the published text, and those that apply from 2027 were not read.
Why
    Above its limit the can may not be sold in the United States.
Passes
    products.base.voc.reactivity: 0.9

    Given second good
    products.touch-up.voc.reactivity: 1.2
Fails
    project.jurisdictions: [US]
    products.primer.voc: {reactivity: 1.6, factors: 2008, categories: [{id: us, jurisdiction: US, category: PCP}]}    # at products.primer.voc.reactivity
    products.base.voc: {reactivity: 1.1, factors: 2008, categories: [{id: us, jurisdiction: US, category: NCP}]}
    products.clear.voc: {reactivity: 1.1, factors: 2008, categories: [{id: us, jurisdiction: US, category: CCP}]}

    Given second good
    products.touch-up.voc.reactivity: 1.21    # at products.touch-up.voc.reactivity

    Given second good
    products.touch-up.voc.categories.primer: {id: primer, jurisdiction: US, category: MSV}    # at products.touch-up.voc.reactivity

    Given second good
    without products.touch-up.voc.factors    # at products.touch-up.voc.factors

    Given second good
    products.touch-up.voc: {factors: "2008", categories: [{id: us, jurisdiction: US, category: FCP}]}    # at products.touch-up.voc.reactivity

    Given second good
    products.touch-up.voc.categories.us.category: ZZZ    # note at products.touch-up.voc.categories

    Given second good
    without products.touch-up.voc    # note at products.touch-up.voc
To put right
    State reactivity, set of factors and category, and confirm the limit in the official table.
"""

from specgen.facts.product.hazard_facts import package_of
from specgen.facts.product.voc_limits import reactivity_of
from specgen.rules.kit import NOTE, WARNING, Basis, Problem, Problems, Product, Spec, cite, date, rule
from specgen.trade.known import NotKnown
from specgen.units.rounding import plain_text


@rule(
    "VOC004",
    on=Product,
    severity=WARNING,
    source=cite("40-CFR-59-E", "59.504", Basis.MEMORY),
)
def reactivity_united_states(product: Product, spec: Spec, on: date) -> Problems:
    if "US" not in spec.project.jurisdictions or package_of(product) != "aerosol":
        return
    found = reactivity_of(product, "US", on)
    if isinstance(found, NotKnown):
        what = f"the can {product.id} states no category for the United States, so its limit cannot be assessed"
        yield Problem(("voc",), what, severity=NOTE)
        return
    if "reactivity" in found.missing:
        yield Problem(("voc", "reactivity"), f"the can {product.id} states no reactivity for the United States")
    if "factors" in found.missing:
        yield Problem(("voc", "factors"), f"the reactivity of {product.id} does not name its set of factors")
    if isinstance(found.limit, NotKnown):
        what = f"the reactivity of {product.id} cannot be assessed: {found.limit.why}"
        yield Problem(("voc", "categories"), what, severity=NOTE)
    elif found.exceeded is not None and found.stated is not None:
        what = f"the reactivity of {product.id}, {plain_text(found.stated)} g O3/g, is above the {found.exceeded.printed()} of {found.exceeded.name}"
        yield Problem(("voc", "reactivity"), what, source=found.exceeded.source)
