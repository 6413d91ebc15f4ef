"""HAZ006 The hazard classes are stated

Checks
    Every product lists its hazard classes and categories, unless it is a liquid stated as not classified; each of them is in the table of label elements. A class with several statements in one category (specific target organ toxicity, category 3) names the statement.
Why
    The whole label can be checked against the classes, but only part of it against statements alone.
Passes
    products.base.hazards.classification.eyes.basis: calculation

    products.barrier.hazards.classification.eyes.category: 2

    Given a water-borne paint that is not classified
Fails
    without products.base.hazards.classification    # note at products.base.hazards.classification

    products.base.hazards.classification.eyes.category: 4    # at products.base.hazards.classification.eyes.category

    without products.base.hazards.classification.can    # at products.base.hazards.classification

    products.base.hazards.classification.vapour: {id: vapour, hazard_class: stot_single, category: "3"}    # at products.base.hazards.classification.vapour.statement

    Given second good
    products.touch-up.hazards.classification.vapour: {id: vapour, hazard_class: stot_single, category: "4"}    # at products.touch-up.hazards.classification.vapour.category

    Given second good
    products.gloss.hazards.classification: []    # note at products.gloss.hazards.classification
To put right
    Copy class and category from section 2 of the safety data sheet.
"""

from specgen.facts.product.hazard_facts import is_known, is_unclassified, package_of
from specgen.rules.kit import NOTE, WARNING, Basis, Problem, Problems, Product, Spec, cite, date, rule, table
from specgen.trade.hazard_class import Classification


@rule(
    "HAZ006",
    on=Product,
    severity=WARNING,
    source=cite("CLP", "Annex I", Basis.REGULATION),
)
def classification_stated(product: Product, spec: Spec, on: date) -> Problems:
    if product.hazards is None or is_unclassified(product):
        return
    if not product.hazards.classification:
        what = f"the product {product.id} states no hazard class, so its label cannot be assessed against classes"
        yield Problem(("hazards", "classification"), what, severity=NOTE)
    elif package_of(product) == "aerosol" and all(e.hazard_class != "aerosols" for e in product.hazards.classification):
        what = f"the can {product.id} states hazard classes but no aerosol category, so its label cannot be assessed"
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
            what = f"{entry.hazard_class}, category {entry.category}, carries {statements}; which of them is not stated"
            yield Problem((*path, "statement"), what, "Name the statement.")
        else:
            known = ", ".join(row["category"] for row in rows)
            what = f"{entry.category} is not a category of {entry.hazard_class}; its categories are: {known}"
            yield Problem((*path, "category"), what)
