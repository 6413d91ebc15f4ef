"""HAZ001 Hazard statements are declared

Checks
    Every product has hazards with at least one H statement, unless it is a liquid stated as not classified: the signal word none, and no hazard class.
Why
    Hazard statements tell people what a product can do to them; a document without them looks harmless.
Passes
    products.base.hazards.statements: [H222, H229, H319, H336]

    Given a water-borne paint that is not classified
Fails
    without products.base.hazards.statements    # at products.base.hazards.statements

    without products.base.hazards    # at products.base.hazards.statements    # also HAZ002 at products.base.hazards.signal_word    # also HAZ003 at products.base.hazards.safety_data_sheet    # also HAZ004 at products.base.hazards.protection

    Given second good
    products.touch-up.hazards.statements: []    # at products.touch-up.hazards.statements

    Given a water-borne paint that is not classified
    products.barrier.hazards.signal_word: Warning    # at products.barrier.hazards.statements    # also HAZ006 at products.barrier.hazards.classification
To put right
    Copy the H statements from section 2 of the current safety data sheet.
"""

from specgen.facts.product.hazard_facts import is_unclassified
from specgen.rules.kit import ERROR, Basis, Problem, Problems, Product, Spec, cite, date, rule


@rule(
    "HAZ001",
    on=Product,
    severity=ERROR,
    source=cite("CLP", "Art. 17(1)(f) and Art. 21", Basis.REGULATION),
    waivable=False,
)
def statements_declared(product: Product, spec: Spec, on: date) -> Problems:
    if is_unclassified(product):
        return
    if product.hazards is None or not product.hazards.statements:
        yield Problem(("hazards", "statements"), f"the product {product.id} declares no hazard statement")
