"""HAZ013 The hazard statements match the classes

Checks
    The declared H statements against those of the declared classes, none missing and none surplus.
Why
    Class and statement express the same hazard; where they differ, one of them is misleading.
Passes
    products.barrier.hazards.statements: [H319, H317, H315, H226]

    products.barrier.hazards.classification.skin: {id: skin, hazard_class: skin_sensitisation, category: 1A}

    products.primer.hazards.statements: [H319, H317, H229, H222]
Fails
    products.primer.hazards.statements: [H222, H229, H319]    # at products.primer.hazards.statements

    products.base.hazards.statements: [H222, H229, H319, H336, H351]    # at products.base.hazards.statements

    Given second good
    products.gloss.hazards.statements: [H226, H317, H319]    # at products.gloss.hazards.statements

    products.barrier.hazards.statements: [H226, H315, H317]    # at products.barrier.hazards.statements

    products.primer.hazards.statements: [H222, H229]    # at products.primer.hazards.statements    # at products.primer.hazards.statements
To put right
    Copy statements and classes from section 2 of the safety data sheet.
"""

from specgen.facts.product.declared import differences, excluded_from_aerosols
from specgen.facts.product.hazard_facts import package_of
from specgen.rules.kit import ERROR, Basis, Problem, Problems, Product, Spec, cite, date, rule, table


@rule(
    "HAZ013",
    on=Product,
    severity=ERROR,
    source=cite("CLP", "Article 21", Basis.REGULATION),
    waivable=False,
)
def statements_follow(product: Product, spec: Spec, on: date) -> Problems:
    elsewhere = {row["omitted"] for row in table("redundant_statements").rows}
    known = {row["id"] for row in table("h_statements").rows}
    if package_of(product) == "aerosol":
        elsewhere |= excluded_from_aerosols()
    for found in differences(product, spec):
        if found.part != "statement" or (found.verdict == "surplus" and found.code in elsewhere):
            continue
        # A code that does not exist is told as such, not as a surplus one.
        if found.code in known:
            what = f"statement {found.code} of {product.id} is {found.verdict}: {found.why}"
            yield Problem(("hazards", "statements"), what, source=found.source)
