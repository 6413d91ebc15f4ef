"""HAZ037 The isocyanate statement agrees with the binder

Checks
    A product stated to contain no isocyanate, against its generic type: polyurethane, polyurea, polyaspartic and two-pack fluoropolymer cure with isocyanate.
Why
    The statement removes EUH204, air-fed breathing apparatus, training and health surveillance from the documents.
Passes
    products.clear.hazards.isocyanates: {contained: yes, monomer_at_limit: yes}

    products.base.hazards.isocyanates: {contained: no}
Fails
    products.clear.hazards.isocyanates: {contained: no, monomer_at_limit: no}    # at products.clear.hazards.isocyanates.contained    # also HAZ018 at products.clear.hazards.supplemental

    Given second good
    products.gloss.hazards.isocyanates: {contained: no, monomer_at_limit: no}    # at products.gloss.hazards.isocyanates.contained

    Given second good
    products.gloss.binder: polyurea
    products.gloss.hazards.isocyanates: {contained: no, monomer_at_limit: no}    # at products.gloss.hazards.isocyanates.contained
To put right
    Correct the statement or the binder; where the product is made without isocyanate, accept the finding by a waiver that names the proof.
"""

from specgen.facts.pairs.families import binder_family
from specgen.facts.product.hazard_facts import isocyanate_by_family
from specgen.rules.kit import LOGIC, WARNING, Problem, Problems, Product, Spec, date, rule


@rule(
    "HAZ037",
    on=Product,
    severity=WARNING,
    source=LOGIC,
)
def isocyanate_fits_the_binder(product: Product, spec: Spec, on: date) -> Problems:
    stated = product.hazards.isocyanates if product.hazards is not None else None
    if stated is not None and stated.contained is False and isocyanate_by_family(product):
        name = binder_family(product.binder)["name"]
        what = f"{product.id} is stated to contain no isocyanate, but its generic type {name} cures with isocyanate"
        yield Problem(("hazards", "isocyanates", "contained"), what)
