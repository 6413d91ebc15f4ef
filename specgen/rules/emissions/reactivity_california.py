"""VOC003 Reactivity is within the limit of California

Checks
    Where the law of California applies: a can states its reactivity with the set of factors, and the reactivity is within the lowest limit of the categories named.
Why
    Above its limit the can may not be sold in California.
Passes
    products.base.voc.reactivity: 0.9

    project.jurisdictions: [US-CA]
    products.primer.voc: {reactivity: 0.70, factors: 2010, categories: [{id: ca, jurisdiction: US-CA, category: primer}]}
    products.base.voc: {reactivity: 1.1, factors: 2010, categories: [{id: ca, jurisdiction: US-CA, category: two_component_coating}]}
    products.clear.voc: {reactivity: 0.85, factors: 2010, categories: [{id: us, jurisdiction: US, category: MSV}, {id: ca, jurisdiction: US-CA, category: clear_coatings}]}
Fails
    project.jurisdictions: [US-CA]
    products.primer.voc: {reactivity: 0.9, factors: 2010, categories: [{id: ca, jurisdiction: US-CA, category: primer}]}    # at products.primer.voc.reactivity
    products.base.voc: {reactivity: 1.1, factors: 2010, categories: [{id: ca, jurisdiction: US-CA, category: two_component_coating}]}
    products.clear.voc: {reactivity: 1.1, factors: 2010, categories: [{id: ca, jurisdiction: US-CA, category: two_component_coating}]}

    project.jurisdictions: [US-CA]
    products.primer.voc: {reactivity: 0.71, factors: 2010, categories: [{id: ca, jurisdiction: US-CA, category: primer}]}    # at products.primer.voc.reactivity
    products.base.voc: {factors: 2010, categories: [{id: ca, jurisdiction: US-CA, category: two_component_coating}]}    # at products.base.voc.reactivity
    products.clear.voc: {reactivity: 0.9, categories: [{id: coat, jurisdiction: US-CA, category: two_component_coating}, {id: clear, jurisdiction: US-CA, category: clear_coatings}]}    # at products.clear.voc.reactivity    # at products.clear.voc.factors

    project.jurisdictions: [US-CA]
    products.primer.voc: {reactivity: 0.70, factors: 2010, categories: [{id: ca, jurisdiction: US-CA, category: primer}]}
    products.base.voc: {reactivity: 0.7, factors: 2010, categories: [{id: us, jurisdiction: US, category: PCP}]}    # note at products.base.voc
    products.clear.voc: {reactivity: 0.7, factors: 2010, categories: [{id: ca, jurisdiction: US-CA, category: zzz}]}    # note at products.clear.voc.categories
To put right
    State reactivity, set of factors and category, and bring the reactivity within the limit.
"""

from specgen.facts.product.hazard_facts import package_of
from specgen.facts.product.voc_limits import reactivity_of
from specgen.rules.kit import ERROR, NOTE, Basis, Problem, Problems, Product, Spec, cite, date, rule
from specgen.trade.known import NotKnown
from specgen.units.rounding import plain_text


@rule(
    "VOC003",
    on=Product,
    severity=ERROR,
    source=cite("17-CCR-94522", "", Basis.REGULATION),
    waivable=False,
)
def reactivity_california(product: Product, spec: Spec, on: date) -> Problems:
    if "US-CA" not in spec.project.jurisdictions or package_of(product) != "aerosol":
        return
    found = reactivity_of(product, "US-CA", on)
    if isinstance(found, NotKnown):
        what = f"the can {product.id} states no category for California, so its limit cannot be assessed"
        yield Problem(("voc",), what, severity=NOTE)
        return
    if "reactivity" in found.missing:
        yield Problem(("voc", "reactivity"), f"the can {product.id} states no reactivity for California")
    if "factors" in found.missing:
        yield Problem(("voc", "factors"), f"the reactivity of {product.id} does not name its set of factors")
    if isinstance(found.limit, NotKnown):
        what = f"the reactivity of {product.id} cannot be assessed: {found.limit.why}"
        yield Problem(("voc", "categories"), what, severity=NOTE)
    elif found.exceeded is not None and found.stated is not None:
        what = f"the reactivity of {product.id}, {plain_text(found.stated)} g O3/g, is above the {found.exceeded.printed()} of {found.exceeded.name}"
        yield Problem(("voc", "reactivity"), what, source=found.exceeded.source)
