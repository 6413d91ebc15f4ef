"""HAZ008 An aerosol carries no statements for flammable gases, liquids or solids

Checks
    An aerosol can has none of the statements H220, H221, H224, H225, H226, H228 and H280, none of their classes, and no gas cylinder pictogram (GHS04).
Why
    The statements of the aerosol cover the gas and the solvent in it. A second statement beside them warns of a container that does not exist.
Passes
    products.base.hazards.pictograms: [GHS07, GHS02]
Fails
    products.base.hazards.statements: [H222, H229, H319, H336, H226]    # at products.base.hazards.statements

    products.base.hazards.pictograms: [GHS02, GHS04, GHS07]    # at products.base.hazards.pictograms

    Given second good
    products.touch-up.hazards.classification.liquid: {id: liquid, hazard_class: flammable_liquids, category: "3"}    # at products.touch-up.hazards.classification.liquid.hazard_class

    products.clear.hazards.classification: [{id: liquid, hazard_class: flammable_liquids, category: "3"}, {id: can, hazard_class: aerosols, category: "1"}, {id: skin, hazard_class: skin_sensitisation, category: "1"}, {id: eyes, hazard_class: eye_damage, category: "2"}]    # at products.clear.hazards.classification.liquid.hazard_class
    products.clear.hazards.statements: [H222, H229, H280, H317, H319]    # at products.clear.hazards.statements
To put right
    Delete the code or the class.
"""

from specgen.facts.product.declared import excluded_from_aerosols
from specgen.facts.product.hazard_facts import is_known, package_of
from specgen.rules.kit import ERROR, Basis, Problem, Problems, Product, Spec, cite, date, rule, table
from specgen.trade.hazard_class import Classification, elements_of, statements_of


@rule(
    "HAZ008",
    on=Product,
    severity=ERROR,
    source=cite("CLP", "Annex I, 2.3.2.1, note 2", Basis.REGULATION),
    waivable=False,
)
def aerosol_without_bulk_classes(product: Product, spec: Spec, on: date) -> Problems:
    if product.hazards is None or package_of(product) != "aerosol":
        return
    for row in table("aerosol_exclusions").rows:
        code, part = row["code"], f"{row['what']}s"
        if row["effect"] == "surplus" and code in getattr(product.hazards, part):
            source = table("aerosol_exclusions").row_citation(row)
            yield Problem(
                ("hazards", part), f"{code} does not belong on the label of the can {product.id}", source=source
            )
    for entry in product.hazards.classification:
        found = Classification(entry.hazard_class, entry.category, entry.statement or "")
        if is_known(found) and {*statements_of(found, elements_of(found))} & excluded_from_aerosols():
            path = ("hazards", "classification", entry.id, "hazard_class")
            yield Problem(path, f"an aerosol is not additionally classified as {entry.hazard_class}")
