"""HAZ027 H304 is not required on an aerosol can

Checks
    H304 among the hazard statements of an aerosol can.
Why
    The contents of an aerosol can cannot be swallowed by the mouthful, so the statement may be omitted.
Passes
    products.barrier.roles: [primer, topcoat]

    products.barrier.hazards.classification.lungs: {id: lungs, hazard_class: aspiration, category: "1"}
    products.barrier.hazards.statements: [H226, H304, H315, H317, H319]
    products.barrier.hazards.pictograms: [GHS02, GHS07, GHS08]
    products.barrier.hazards.signal_word: Danger
Fails
    products.base.hazards.statements: [H222, H229, H304, H319, H336]    # at products.base.hazards.statements    # also HAZ013 at products.base.hazards.statements

    Given second good
    products.touch-up.hazards.statements: [H222, H229, H304, H319, H336]    # at products.touch-up.hazards.statements    # also HAZ013 at products.touch-up.hazards.statements
To put right
    Omit it from the label, or keep it; the class stays in section 2 of the safety data sheet.
"""

from specgen.facts.product.hazard_facts import package_of
from specgen.rules.kit import NOTE, Basis, Problem, Problems, Product, Spec, cite, date, rule, table


@rule(
    "HAZ027",
    on=Product,
    severity=NOTE,
    source=cite("CLP", "Annex I, 1.3.3", Basis.MEMORY),
)
def aspiration_on_aerosol(product: Product, spec: Spec, on: date) -> Problems:
    if product.hazards is None or package_of(product) != "aerosol":
        return
    for row in table("aerosol_exclusions").rows:
        if row["effect"] == "not needed" and row["code"] in product.hazards.statements:
            yield Problem(("hazards", "statements"), f"{row['code']} is not required on the can {product.id}")
