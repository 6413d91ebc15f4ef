"""HAZ016 Every precautionary statement is supported by a class

Checks
    Each P statement belongs to one of the declared classes, is a general one (P101 to P103), or has a stated reason.
Why
    A precautionary statement without its hazard discredits the others.
Passes
    products.base.hazards.precautions: [P210, P211, P251, P410+P412, P284]
    products.base.hazards.precautions_reason: the booth of this customer has no forced air

    products.base.hazards.precautions: [P102, P210, P211, P251, P410+P412]
Fails
    products.base.hazards.precautions: [P210, P211, P251, P410+P412, P284]    # at products.base.hazards.precautions

    Given second good
    products.gloss.hazards.precautions: [P210, P251, P261, P280]    # at products.gloss.hazards.precautions
To put right
    Delete it, state the class it belongs to, or state the reason under precautions_reason.
"""

from specgen.facts.product.declared import differences
from specgen.rules.kit import WARNING, Basis, Problem, Problems, Product, Spec, cite, date, rule


@rule(
    "HAZ016",
    on=Product,
    severity=WARNING,
    source=cite("CLP", "Article 22(2)", Basis.REGULATION),
)
def precautions_belong(product: Product, spec: Spec, on: date) -> Problems:
    if product.hazards is None or product.hazards.precautions_reason is not None:
        return
    for found in differences(product, spec):
        if found.part == "precaution" and found.verdict == "surplus":
            what = f"precautionary statement {found.code} of {product.id}: {found.why}"
            yield Problem(("hazards", "precautions"), what, source=found.source)
