"""HAZ012 The pictograms are those of the classes

Checks
    The declared pictograms against those of the declared classes, after the rules by which one gives way to another.
Why
    A pictogram is read from farther away than any sentence; a missing one is a hazard nobody sees.
Passes
    products.barrier.hazards.pictograms: [GHS07, GHS02]
Fails
    products.base.hazards.pictograms: [GHS02]    # at products.base.hazards.pictograms

    products.base.hazards.pictograms: [GHS02, GHS07, GHS09]    # at products.base.hazards.pictograms
To put right
    Copy the pictograms from section 2 of the safety data sheet, or put the classes right.
"""

from __future__ import annotations

from collections.abc import Iterator

from specgen.findings import Severity
from specgen.model.product import Product
from specgen.model.senses import Concern
from specgen.model.spec import Spec
from specgen.plan.hazard_facts import package_of
from specgen.rules.declare import Problem, rule
from specgen.rules.hazards.declared import differences, excluded_from_aerosols
from specgen.standards.citations import Basis, cite


def _told_elsewhere(product: Product, code: str) -> bool:
    """The gas cylinder on an aerosol has a rule of its own."""
    return package_of(product) == "aerosol" and code in excluded_from_aerosols()


@rule(
    "HAZ012",
    on=Product,
    severity=Severity.ERROR,
    concern=Concern.SAFETY,
    source=cite("CLP", "Article 26", Basis.REGULATION),
    waivable=False,
)
def pictograms_follow(product: Product, spec: Spec) -> Iterator[Problem]:
    for found in differences(product, spec):
        if found.part == "pictogram" and not _told_elsewhere(product, found.code):
            what = f"pictogram {found.code} of {product.id} is {found.verdict}: {found.why}"
            yield Problem(("hazards", "pictograms"), what, source=found.source)
