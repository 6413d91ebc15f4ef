"""HAZ012 The pictograms match the classes

Checks
    The declared pictograms against those of the declared classes, by the rules under which one pictogram takes precedence over another.
Why
    A pictogram is read from farther away than any sentence; a missing one is a hazard that goes unnoticed.
Passes
    products.barrier.hazards.pictograms: [GHS07, GHS02]
Fails
    products.base.hazards.pictograms: [GHS02]    # at products.base.hazards.pictograms

    products.base.hazards.pictograms: [GHS02, GHS07, GHS09]    # at products.base.hazards.pictograms

    Given second good
    products.touch-up.hazards.pictograms: [GHS07]    # at products.touch-up.hazards.pictograms

    products.barrier.hazards.pictograms: [GHS02, GHS04, GHS07]    # at products.barrier.hazards.pictograms
To put right
    Copy the pictograms from section 2 of the safety data sheet, or correct the classes.
"""

from specgen.facts.product.declared import differences, excluded_from_aerosols
from specgen.facts.product.hazard_facts import package_of
from specgen.rules.kit import ERROR, Basis, Problem, Problems, Product, Spec, cite, date, rule


def _told_elsewhere(product: Product, code: str) -> bool:
    """The gas cylinder on an aerosol has a rule of its own."""
    return package_of(product) == "aerosol" and code in excluded_from_aerosols()


@rule(
    "HAZ012",
    on=Product,
    severity=ERROR,
    source=cite("CLP", "Article 26", Basis.REGULATION),
    waivable=False,
)
def pictograms_follow(product: Product, spec: Spec, on: date) -> Problems:
    for found in differences(product, spec):
        if found.part == "pictogram" and not _told_elsewhere(product, found.code):
            what = f"pictogram {found.code} of {product.id} is {found.verdict}: {found.why}"
            yield Problem(("hazards", "pictograms"), what, source=found.source)
