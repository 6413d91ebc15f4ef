"""VOC003 Reactivity is within the limit of California

Checks
    Where the law of California holds: a can states its reactivity with the set of factors, and it is within the lowest limit of the categories named.
Why
    Above its limit the can may not be sold there.
Passes
    products.base.voc.reactivity: 0.9
Fails
    project.jurisdictions: [US-CA]
    products.primer.voc: {reactivity: 0.9, factors: 2010, categories: [{id: ca, jurisdiction: US-CA, category: primer}]}    # at products.primer.voc.reactivity
    products.base.voc: {reactivity: 1.1, factors: 2010, categories: [{id: ca, jurisdiction: US-CA, category: two_component_coating}]}
    products.clear.voc: {reactivity: 1.1, factors: 2010, categories: [{id: ca, jurisdiction: US-CA, category: two_component_coating}]}
To put right
    State reactivity, factors and category, and bring the reactivity under the limit.
"""

from specgen.facts.product.hazard_facts import package_of
from specgen.rules.emissions.reactivity import reactivity_within
from specgen.rules.kit import ERROR, Basis, Problems, Product, Spec, cite, date, rule


@rule(
    "VOC003",
    on=Product,
    severity=ERROR,
    source=cite("17-CCR-94522", "", Basis.REGULATION),
    waivable=False,
)
def reactivity_california(product: Product, spec: Spec, on: date) -> Problems:
    if "US-CA" in spec.project.jurisdictions and package_of(product) == "aerosol":
        yield from reactivity_within(product, "US-CA", "California", date.max)
