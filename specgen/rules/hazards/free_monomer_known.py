"""HAZ020 The free monomer content of an isocyanate is stated

Checks
    A product containing isocyanate states its content of free monomeric diisocyanates, or whether that reaches 0.1 %; where both are stated, they agree.
Why
    The training requirement depends on this one figure. If it is not stated, 0.1 % or more is assumed.
Passes
    products.clear.hazards.isocyanates: {monomer: 0.3 %}

    products.clear.hazards.isocyanates: {monomer: 0.1 %, monomer_at_limit: yes}

    products.clear.hazards.isocyanates: {monomer: 0.09 %, monomer_at_limit: no}
Fails
    products.clear.hazards.isocyanates: {contained: yes}    # at products.clear.hazards.isocyanates.monomer_at_limit

    products.clear.hazards.isocyanates: {monomer: 0.05 %, monomer_at_limit: yes}    # at products.clear.hazards.isocyanates.monomer_at_limit

    products.clear.hazards.isocyanates: {monomer: 0.1 %, monomer_at_limit: no}    # at products.clear.hazards.isocyanates.monomer_at_limit

    Given second good
    without products.gloss.hazards.isocyanates    # at products.gloss.hazards.isocyanates.monomer_at_limit
To put right
    Take the content from section 3 of the safety data sheet, or ask the manufacturer of the hardener.
"""

from specgen.facts.product.hazard_facts import isocyanates_in, monomer_at_limit
from specgen.rules.kit import LOGIC, PRACTICE, WARNING, Problem, Problems, Product, Spec, date, rule


@rule("HAZ020", on=Product, severity=WARNING, source=PRACTICE)
def free_monomer_known(product: Product, spec: Spec, on: date) -> Problems:
    if product.hazards is None or not isocyanates_in(product):
        return
    path, stated = ("hazards", "isocyanates", "monomer_at_limit"), product.hazards.isocyanates
    at_limit = monomer_at_limit(product)
    if at_limit is None:
        what = f"the free monomer content of {product.id} is not stated; 0.1 % or more is assumed"
        yield Problem(path, what)
    elif stated is not None and stated.monomer_at_limit is not None and stated.monomer_at_limit is not at_limit:
        answer = "yes" if stated.monomer_at_limit else "no"
        what = f"{product.id} states {stated.monomer} of free monomer, which contradicts monomer_at_limit: {answer}"
        yield Problem(path, what, source=LOGIC)
