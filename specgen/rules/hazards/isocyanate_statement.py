"""HAZ018 A product containing isocyanate states it (EUH204)

Checks
    EUH204 on every product containing isocyanate in any form, in the EU and Great Britain. Whether it contains any is taken from its own statement, otherwise from its binder.
Why
    People who are allergic to isocyanate must know before the first breath.
Passes
    products.clear.hazards.isocyanates: {contained: yes, monomer_at_limit: yes}

    Given second good
    without products.gloss.hazards.supplemental
Fails
    without products.clear.hazards.supplemental    # at products.clear.hazards.supplemental

    products.clear.hazards.isocyanates: {contained: no, monomer_at_limit: no}    # note at products.clear.hazards.supplemental    # also HAZ037 at products.clear.hazards.isocyanates.contained

    project.jurisdictions: [GB]
    without products.clear.hazards.supplemental    # at products.clear.hazards.supplemental    # also VOC001 at products.barrier.voc.categories    # also VOC001 at products.base.voc.categories    # also VOC001 at products.clear.voc.categories    # also VOC001 at products.primer.voc.categories

    products.base.hazards.isocyanates: {contained: no}
    products.base.hazards.supplemental: [EUH204]    # note at products.base.hazards.supplemental

    products.base.binder: surfacer_2k
    products.base.hazards.epoxy_up_to_700: no    # note at products.base.hazards.supplemental
To put right
    Add EUH204; or, where the binder is misleading, state whether isocyanate is contained.
"""

from specgen.facts.product.declared import in_europe
from specgen.facts.product.hazard_facts import isocyanates_in
from specgen.rules.kit import ERROR, NOTE, Basis, Problem, Problems, Product, Spec, cite, date, rule

CODE = "EUH204"


@rule(
    "HAZ018",
    on=Product,
    severity=ERROR,
    source=cite("CLP", "Annex II, 2.4", Basis.REGULATION),
    waivable=False,
)
def isocyanate_statement(product: Product, spec: Spec, on: date) -> Problems:
    if product.hazards is None or not in_europe(spec):
        return
    path, held = ("hazards", "supplemental"), isocyanates_in(product)
    declared = CODE in product.hazards.supplemental
    if held and not declared:
        yield Problem(path, f"{product.id} contains isocyanate but does not carry {CODE}")
    elif held is None and not declared:
        what = f"whether {product.id} requires {CODE} cannot be assessed: its binder leaves open whether it contains isocyanate"
        yield Problem(path, what, severity=NOTE)
    stated = product.hazards.isocyanates
    # Only a statement speaks against a declared code; a binder that says nothing of isocyanate does not.
    if declared and stated is not None and stated.contained is False:
        what = f"{product.id} carries {CODE} but is stated to contain no isocyanate"
        yield Problem(path, what, severity=NOTE)
