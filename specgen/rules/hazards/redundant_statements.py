"""HAZ014 No statement duplicates another

Checks
    Pairs of statements of which the more severe one makes the other redundant.
Why
    The same hazard stated twice takes space from the others.
Passes
    products.base.hazards.statements: [H222, H229, H319, H336]
Fails
    products.barrier.hazards.classification.water: {id: water, hazard_class: aquatic_chronic, category: 1}    # at products.barrier.hazards.statements
    products.barrier.hazards.statements: [H226, H315, H317, H319, H400, H410]    # also HAZ015 at products.barrier.hazards.precautions    # also HAZ015 at products.barrier.hazards.precautions
    products.barrier.hazards.pictograms: [GHS02, GHS07, GHS09]

    products.barrier.hazards.classification.skin: {id: skin, hazard_class: skin_corrosion, category: "1"}
    products.barrier.hazards.statements: [H226, H314, H318]    # at products.barrier.hazards.statements    # also HAZ011 at products.barrier.hazards.signal_word    # also HAZ012 at products.barrier.hazards.pictograms    # also HAZ012 at products.barrier.hazards.pictograms    # also HAZ013 at products.barrier.hazards.statements    # also HAZ013 at products.barrier.hazards.statements    # also HAZ016 at products.barrier.hazards.precautions
To put right
    Omit the less severe statement.
"""

from specgen.rules.kit import WARNING, Basis, Problem, Problems, Product, Spec, cite, date, rule, table


@rule(
    "HAZ014",
    on=Product,
    severity=WARNING,
    source=cite("CLP", "Article 27", Basis.REGULATION),
)
def redundant_statements(product: Product, spec: Spec, on: date) -> Problems:
    declared = product.hazards.statements if product.hazards is not None else ()
    for row in table("redundant_statements").rows:
        if row["present"] in declared and row["omitted"] in declared:
            source = table("redundant_statements").row_citation(row)
            what = f"{row['omitted']} of {product.id} is redundant beside {row['present']}"
            yield Problem(("hazards", "statements"), what, source=source)
