"""HAZ007 An aerosol carries its own hazard statements

Checks
    The hazard statements of an aerosol can are H222 with H229, H223 with H229, or H229 alone.
Why
    H229 warns that the can may burst if heated, H222 or H223 that its spray is flammable. With half of the pair, one hazard is missing.
Passes
    products.base.hazards.statements: [H229, H222, H319, H336]

    Given second good
    products.mastic.hazards.statements: [H226, H315, H317, H319]
Fails
    products.base.hazards.statements: [H222, H319, H336]    # at products.base.hazards.statements    # also HAZ013 at products.base.hazards.statements

    Given second good
    products.touch-up.hazards.statements: [H222, H223, H229, H319, H336]    # at products.touch-up.hazards.statements    # also HAZ013 at products.touch-up.hazards.statements
To put right
    Copy the hazard statements of the aerosol from section 2 of the safety data sheet.
"""

from specgen.facts.product.declared import aerosol_sets, aerosol_statements
from specgen.facts.product.hazard_facts import package_of
from specgen.rules.kit import ERROR, Basis, Problem, Problems, Product, Spec, cite, date, rule


@rule(
    "HAZ007",
    on=Product,
    severity=ERROR,
    source=cite("CLP", "Annex I, Table 2.3.1", Basis.REGULATION),
    waivable=False,
)
def aerosol_has_its_statements(product: Product, spec: Spec, on: date) -> Problems:
    if product.hazards is None or not product.hazards.statements or package_of(product) != "aerosol":
        return
    declared = aerosol_statements(product)
    if declared not in aerosol_sets().values():
        shown = ", ".join(sorted(declared)) or "none of them"
        sets = "; ".join(" with ".join(sorted(codes)) for codes in aerosol_sets().values())
        yield Problem(
            ("hazards", "statements"),
            f"the label of the can {product.id} has {shown}; an aerosol label has one of: {sets}",
        )
