"""HAZ026 Classes derived from the composition are declared

Checks
    The classes that the composition reaches by the limits for mixtures (sensitisation, carcinogenicity, reproductive toxicity, narcosis, aquatic hazards and the others), against those declared. Specific concentration limits without a source, narcosis and respiratory irritation, which require expert judgement, and acute toxicity, which is calculated from the figures that stand for a category, give a warning.
Why
    A class that follows from the contents and is not declared is a hazard of which nobody is warned.
Passes
    products.primer.composition.solvent.classes: [{id: eyes, hazard_class: eye_damage, category: 2}]

    products.primer.hazards.classification.eyes: {id: eyes, hazard_class: eye_damage, category: "1"}
    products.primer.hazards.statements: [H222, H229, H317, H318]
    products.primer.hazards.pictograms: [GHS02, GHS05, GHS07]
    products.primer.composition.solvent.classes: [{id: eyes, hazard_class: eye_damage, category: "2"}]

    Given second good
    products.touch-up.composition.solvent.classes: [{id: vapour, hazard_class: stot_single, category: "3", statement: H336}, {id: water, hazard_class: aquatic_chronic, category: "1"}]

    products.primer.composition.gas: {id: gas, name: an acid, kind: solvent, mass_share: 2.9 %, density: 1.2 g/mL, adds_up: no, classes: [{id: skin, hazard_class: skin_corrosion, category: "2"}]}
    products.primer.composition.solids.mass_share: 57.1 %

    products.primer.composition.solvent.classes: [{id: vapour, hazard_class: acute_inhalation, category: "4"}, {id: skin, hazard_class: acute_dermal, category: "4"}]
Fails
    products.primer.composition.solvent.classes: [{id: cancer, hazard_class: carcinogenicity, category: 1B}]    # at products.primer.hazards.classification

    products.primer.composition.solvent.classes: [{id: vapour, hazard_class: stot_single, category: 3, statement: H336}]    # warning at products.primer.hazards.classification

    Given second good
    products.touch-up.composition.solvent.classes: [{id: cancer, hazard_class: carcinogenicity, category: 1B}]    # at products.touch-up.hazards.classification

    products.primer.composition.solvent.classes: [{id: eyes, hazard_class: eye_damage, category: "1"}]    # at products.primer.hazards.classification

    products.primer.composition.solvent.classes: [{id: water, hazard_class: aquatic_chronic, category: "1"}]    # at products.primer.hazards.classification

    products.primer.composition.solvent.classes: [{id: skin, hazard_class: skin_sensitisation, category: "1"}, {id: cancer, hazard_class: carcinogenicity, category: 1B, limit: 5 %}]    # warning at products.primer.hazards.classification

    products.primer.composition.solvent.classes: [{id: skin, hazard_class: skin_sensitisation, category: "1", limit: 5 %}, {id: cancer, hazard_class: carcinogenicity, category: 1B, limit: 5 %, limit_source: supplier}]    # at products.primer.hazards.classification

    products.primer.composition.gas: {id: gas, name: an acid, kind: solvent, mass_share: 3 %, density: 1.2 g/mL, adds_up: no, classes: [{id: skin, hazard_class: skin_corrosion, category: "2"}]}    # at products.primer.hazards.classification
    products.primer.composition.solids.mass_share: 57 %

    products.primer.composition.solvent.classes: [{id: mouth, hazard_class: acute_oral, category: "4"}]    # warning at products.primer.hazards.classification

    products.primer.composition.solids.classes: [{id: mist, hazard_class: acute_inhalation, category: "4"}]    # warning at products.primer.hazards.classification

    Given second good
    products.touch-up.composition.solvent.classes: [{id: vapour, hazard_class: stot_single, category: "3", statement: H335}]    # warning at products.touch-up.hazards.classification
To put right
    Have the classifier assess it, then declare the class or correct the composition.
"""

from specgen.facts.product.declared import water_has_no_law
from specgen.facts.product.hazard_facts import declared_classes, is_known
from specgen.facts.product.hazards import hazards_of
from specgen.rules.kit import ERROR, NOTE, WARNING, Basis, Problem, Problems, Product, Spec, cite, date, rule
from specgen.trade.hazard_class import Classification, severity_rank
from specgen.trade.judged import Classified
from specgen.trade.known import NotKnown


def _own_limit_without_source(judged: Classified, product: Product) -> bool:
    return any(
        entry.hazard_class == judged.hazard_class and entry.limit is not None and entry.limit_source is None
        for line in product.composition
        for entry in line.classes
    )


@rule(
    "HAZ026",
    on=Product,
    severity=ERROR,
    source=cite("CLP", "Annex I, parts 3 and 4", Basis.REGULATION),
    waivable=False,
)
def classes_of_the_composition(product: Product, spec: Spec, on: date) -> Problems:
    if product.hazards is None or not product.hazards.classification:
        return
    declared = declared_classes(product)
    for judged in hazards_of(spec, product.id, on).mixture:
        if water_has_no_law(judged.hazard_class if isinstance(judged, Classified) else judged.what, spec):
            continue
        if isinstance(judged, NotKnown):
            what = f"{judged.what} of {product.id} cannot be assessed: {judged.why}"
            yield Problem(("hazards", "classification"), what, severity=NOTE)
            continue
        alike = [found for found in declared if found.hazard_class == judged.hazard_class and is_known(found)]
        if judged.statement:
            alike = [found for found in alike if found.statement == judged.statement]
        wanted = severity_rank(Classification(judged.hazard_class, judged.category))
        if any(severity_rank(found) <= wanted for found in alike):
            continue
        said = f" ({judged.statement})" if judged.statement else ""
        what = f"{product.id} reaches {judged.hazard_class}, category {judged.category}{said}, which is not declared: {judged.why}"
        expert = judged.statement or judged.hazard_class.startswith("acute")
        severity = WARNING if expert or _own_limit_without_source(judged, product) else None
        yield Problem(("hazards", "classification"), what, severity=severity, source=judged.source)
