"""VOC004 Reactivity is within the federal limit of the United States

Checks
    Where the law of the United States holds: a can states its reactivity with the set of factors, and it is within the lowest limit of the categories named. The limits of 2008 are from memory and those from 2027 on were not read. The day is that of the safety data sheet.
Why
    Above its limit the can may not be sold there.
Passes
    products.base.voc.reactivity: 0.9
Fails
    project.jurisdictions: [US]
    products.primer.voc: {reactivity: 1.6, factors: 2008, categories: [{id: us, jurisdiction: US, category: PCP}]}    # at products.primer.voc.reactivity
    products.base.voc: {reactivity: 1.1, factors: 2008, categories: [{id: us, jurisdiction: US, category: NCP}]}
    products.clear.voc: {reactivity: 1.1, factors: 2008, categories: [{id: us, jurisdiction: US, category: CCP}]}
To put right
    State reactivity, factors and category, and confirm the limit in the official table.
"""

from specgen.facts.product.hazard_facts import package_of
from specgen.rules.emissions.reactivity import reactivity_within
from specgen.rules.kit import WARNING, Basis, Problems, Product, Spec, cite, date, rule


def _day(product: Product) -> date:
    """The day of the safety data sheet; without one the newest table decides, and that was not read."""
    sheet = product.hazards.safety_data_sheet if product.hazards is not None else None
    return sheet.date if sheet is not None and sheet.date is not None else date.max


@rule(
    "VOC004",
    on=Product,
    severity=WARNING,
    source=cite("40-CFR-59-E", "59.504", Basis.MEMORY),
)
def reactivity_united_states(product: Product, spec: Spec, on: date) -> Problems:
    if "US" in spec.project.jurisdictions and package_of(product) == "aerosol":
        yield from reactivity_within(product, "US", "the United States", _day(product))
