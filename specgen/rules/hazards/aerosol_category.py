"""HAZ009 The aerosol category is no milder than its composition allows

Checks
    The declared category of an aerosol can against its composition and its spray test. An untested aerosol is category 1 as soon as it contains more than 1 % flammable components.
Why
    A can labelled too mildly is sprayed next to the heater it should have been kept away from.
Passes
    products.base.hazards.aerosol_test: {report: TR-17, ignition_distance: 90 cm}

    products.clear.hazards.classification.can.category: "1"
Fails
    products.primer.composition.gas.flammable: yes    # at products.primer.hazards.classification.can.category
    products.primer.hazards.classification.can.category: 2
    products.primer.hazards.statements: [H223, H229, H317, H319]
    products.primer.hazards.signal_word: Warning

    products.primer.hazards.classification.can.category: 2    # note at products.primer.hazards.classification.can.category
    products.primer.hazards.statements: [H223, H229, H317, H319]
    products.primer.hazards.signal_word: Warning

    Given second good
    products.touch-up.hazards.classification: [{id: eyes, hazard_class: eye_damage, category: "2"}, {id: can, hazard_class: aerosols, category: "2"}, {id: vapour, hazard_class: stot_single, category: "3", statement: H336}]    # note at products.touch-up.hazards.classification.can.category
    products.touch-up.hazards.statements: [H223, H229, H319, H336]
    products.touch-up.hazards.signal_word: Warning

    products.primer.composition.gas.flammable: yes
    products.primer.hazards.aerosol_test: {report: TR-17, ignition_distance: 75 cm}
    products.primer.hazards.classification.can.category: 2    # at products.primer.hazards.classification.can.category
    products.primer.hazards.statements: [H223, H229, H317, H319]
    products.primer.hazards.signal_word: Warning

    without products.primer.hazards.classification    # also HAZ006 note at products.primer.hazards.classification
    products.primer.composition.gas.flammable: yes
    products.primer.hazards.statements: [H223, H229, H317, H319]    # at products.primer.hazards.statements
    products.primer.hazards.signal_word: Warning
To put right
    Declare the category that results, or state the spray test with its ignition distance.
"""

from specgen.facts.product.declared import aerosol_category_declared
from specgen.facts.product.hazards import aerosol_of
from specgen.rules.kit import ERROR, NOTE, Basis, Problem, Problems, Product, Spec, cite, date, rule, table
from specgen.trade.codes import parts
from specgen.trade.known import NotKnown


@rule(
    "HAZ009",
    on=Product,
    severity=ERROR,
    source=cite("CLP", "Annex I, 2.3.2.2", Basis.REGULATION),
    waivable=False,
)
def aerosol_category(product: Product, spec: Spec, on: date) -> Problems:
    declared = aerosol_category_declared(product)
    categories = parts(table("hazard_classes").row("id", "aerosols")["categories"])
    if product.hazards is None or declared not in categories[1:]:
        return
    entry = next((e for e in product.hazards.classification if e.hazard_class == "aerosols"), None)
    path = ("hazards", "statements") if entry is None else ("hazards", "classification", entry.id, "category")
    judged = aerosol_of(product)
    if isinstance(judged, NotKnown):
        missing = f"; missing: {', '.join(judged.missing)}" if judged.missing else ""
        what = f"category {declared} of the can {product.id} cannot be assessed: {judged.why}{missing}"
        yield Problem(path, what, severity=NOTE)
    elif judged is not None and categories.index(judged.category) < categories.index(declared):
        what = (
            f"the can {product.id} is declared as category {declared}, but is category {judged.category}: {judged.why}"
        )
        yield Problem(path, what, source=judged.source)
