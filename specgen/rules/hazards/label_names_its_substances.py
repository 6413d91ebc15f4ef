"""HAZ046 The label names the substances its health classes come from

Checks
    In the EU and Great Britain each declared class of acute toxicity, skin corrosion, serious eye damage, sensitisation, of harm to genes, cancer or reproduction, of organs and of aspiration: where the composition shows the components it comes from, at least one of them is named on the label. Where the label names others, a component whose CAS number the tables know is told for information, for a substance may have several names; any other is taken as named.
Why
    A doctor, and a person who is allergic, goes by the name of the substance. Four names suffice as a rule.
Passes
    products.primer.composition.solids.classes: [{id: skin, hazard_class: skin_sensitisation, category: 1}]

    products.primer.composition.solids.classes: [{id: eyes, hazard_class: eye_damage, category: 2}]
    products.primer.hazards.named_on_label: []

    Given second good
    project.jurisdictions: [US]
    products.touch-up.composition.solvent.classes: [{id: vapour, hazard_class: stot_single, category: "3", statement: H336}]
Fails
    without products.primer.hazards.named_on_label    # at products.primer.hazards.named_on_label
    products.primer.composition.solids.classes: [{id: skin, hazard_class: skin_sensitisation, category: 1}]

    without products.primer.hazards.named_on_label
    products.primer.composition.solvent: {id: solvent, name: trade solvent, cas: 2855-13-2, kind: solvent, mass_share: 0.1 %, density: 0.92 g/mL}    # at products.primer.hazards.named_on_label
    products.primer.composition.solids.mass_share: 69.9 %

    products.primer.composition.solvent: {id: solvent, name: trade solvent, cas: 2855-13-2, kind: solvent, mass_share: 0.1 %, density: 0.92 g/mL}    # note at products.primer.hazards.named_on_label
    products.primer.composition.solids.mass_share: 69.9 %
To put right
    Name the substances as section 1 or 3 of the safety data sheet does, under named_on_label.
"""

from specgen.facts.product.declared import in_europe
from specgen.facts.product.named import unnamed
from specgen.rules.kit import NOTE, WARNING, Basis, Problem, Problems, Product, Spec, cite, date, rule


@rule("HAZ046", on=Product, severity=WARNING, source=cite("CLP", "Article 18(3)(b)", Basis.REGULATION))
def label_names_its_substances(product: Product, spec: Spec, on: date) -> Problems:
    if not in_europe(spec):
        return
    for found in unnamed(product, on):
        lines = " or ".join(line.name for line in found.components)
        what = f"{found.declared} of {product.id} comes from {lines}, and the label names none of it"
        yield Problem(("hazards", "named_on_label"), what, severity=NOTE if found.others_named else None)
