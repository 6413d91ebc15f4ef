"""HAZ006 The hazard classes are stated

Checks
    Every product lists its hazard classes and categories, each of which the table of label elements holds. A class with several statements in one category (specific target organ, category 3) names the statement.
Why
    From classes the whole label can be checked; from statements alone only part of it.
Passes
    products.base.hazards.classification.eyes.basis: calculation
Fails
    without products.base.hazards.classification    # at products.base.hazards.classification

    products.base.hazards.classification.eyes.category: 4    # at products.base.hazards.classification.eyes.category

    without products.base.hazards.classification.can    # at products.base.hazards.classification
To put right
    Copy class and category from section 2 of the safety data sheet.
"""

from __future__ import annotations

from collections.abc import Iterator

from specgen.findings import Severity
from specgen.model.product import Product
from specgen.model.senses import Concern
from specgen.model.spec import Spec
from specgen.plan.hazard_facts import is_known, package_of
from specgen.rules.declare import Problem, rule
from specgen.standards.citations import Basis, cite
from specgen.standards.tables import table
from specgen.trade.hazard_class import Classification


@rule(
    "HAZ006",
    on=Product,
    severity=Severity.WARNING,
    concern=Concern.SAFETY,
    source=cite("CLP", "Annex I", Basis.REGULATION),
)
def classification_stated(product: Product, spec: Spec) -> Iterator[Problem]:
    if product.hazards is None:
        return
    if not product.hazards.classification:
        what = f"the product {product.id} states no hazard class, so its label cannot be judged from classes"
        yield Problem(("hazards", "classification"), what, severity=Severity.NOTE)
    elif package_of(product) == "aerosol" and all(e.hazard_class != "aerosols" for e in product.hazards.classification):
        what = f"the can {product.id} names classes and no category of the aerosol, so its label cannot be judged"
        yield Problem(("hazards", "classification"), what)
    for entry in product.hazards.classification:
        found = Classification(entry.hazard_class, entry.category, entry.statement or "")
        if is_known(found):
            continue
        path = ("hazards", "classification", entry.id)
        rows = [row for row in table("label_elements").rows if row["hazard_class"] == entry.hazard_class]
        alike = [row for row in rows if row["category"] == entry.category]
        if alike:
            statements = " or ".join(row["statements"] for row in alike)
            what = f"{entry.hazard_class}, category {entry.category}, carries {statements}, and it does not say which"
            yield Problem((*path, "statement"), what, "Name the statement.")
        else:
            known = ", ".join(row["category"] for row in rows)
            what = f"{entry.category} is no category of {entry.hazard_class}; it has {known}"
            yield Problem((*path, "category"), what)
