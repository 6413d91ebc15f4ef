"""HAZ037 The isocyanate statement agrees with the binder

Checks
    A product stated to contain no isocyanate, against its binder: polyurethane cures with isocyanate.
Why
    The statement removes EUH204, air-fed breathing apparatus, training and health surveillance from the documents.
Passes
    products.clear.hazards.isocyanates: {contained: yes, monomer_at_limit: yes}

    products.base.hazards.isocyanates: {contained: no}
Fails
    products.clear.hazards.isocyanates: {contained: no, monomer_at_limit: no}    # at products.clear.hazards.isocyanates.contained    # also HAZ018 at products.clear.hazards.supplemental

    Given second good
    products.gloss.hazards.isocyanates: {contained: no, monomer_at_limit: no}    # at products.gloss.hazards.isocyanates.contained
To put right
    Correct the statement or the binder; where the polyurethane is made without isocyanate, accept the finding by a waiver that names the proof.
"""

from specgen.facts.product.hazard_facts import ISOCYANATE_BINDERS
from specgen.rules.kit import LOGIC, WARNING, Problem, Problems, Product, Spec, date, rule


@rule(
    "HAZ037",
    on=Product,
    severity=WARNING,
    source=LOGIC,
)
def isocyanate_fits_the_binder(product: Product, spec: Spec, on: date) -> Problems:
    stated = product.hazards.isocyanates if product.hazards is not None else None
    if stated is not None and stated.contained is False and product.binder in ISOCYANATE_BINDERS:
        what = f"{product.id} is stated to contain no isocyanate, but its binder {product.binder} is a polyurethane"
        yield Problem(("hazards", "isocyanates", "contained"), what)
