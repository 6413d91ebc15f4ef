"""HAZ039 Classes that the law gives the components are declared

Checks
    Each component with a CAS number in the table of harmonised classes: the classes that the product reaches with them, against those declared. In the EU the harmonised class binds and this is an error; elsewhere, it is told for information; narcosis, irritation of the airways and acute toxicity need an expert's judgement and give a warning. A component that itself declares less than its harmonised classes, or a higher specific limit than the law has, gives a warning. What an entry that is adopted already will add from a later day on is told with the day. A component that is carcinogenic only above a share of benzene or the like is left to its supplier's proof.
Why
    A harmonised class holds for everyone who places the substance on the market. One that is not declared is a hazard of which nobody is warned.
Passes
    products.primer.composition.solvent: {id: solvent, name: MIBK, cas: 108-10-1, kind: solvent, mass_share: 0.9 %, density: 0.80 g/mL}
    products.primer.composition.solids.mass_share: 69.1 %

    products.primer.composition.solvent: {id: solvent, name: white spirit, cas: 64742-95-6, kind: solvent, mass_share: 40 %, density: 0.80 g/mL}

    products.primer.composition.solvent: {id: solvent, name: IPDI, cas: 4098-71-9, kind: solvent, mass_share: 0.4 %, density: 1.06 g/mL, classes: [{id: lungs, hazard_class: respiratory_sensitisation, category: "1", limit: 0.5 %}, {id: skin, hazard_class: skin_sensitisation, category: "1"}, {id: breathed, hazard_class: acute_inhalation, category: "3"}, {id: airways, hazard_class: stot_single, category: "3", statement: H335}, {id: irritant, hazard_class: skin_corrosion, category: "2"}, {id: eyes, hazard_class: eye_damage, category: "2"}, {id: water, hazard_class: aquatic_chronic, category: "2"}]}
    products.primer.composition.solids.mass_share: 69.6 %
    products.primer.hazards.sensitisers_named: [IPDI]
    products.primer.hazards.supplemental: [EUH205, EUH208]

    products.primer.composition.solvent: {id: solvent, name: phosphoric acid, cas: 7664-38-2, kind: solvent, mass_share: 9.9 %, density: 1.7 g/mL, classes: [{id: skin, hazard_class: skin_corrosion, category: 1B}]}
    products.primer.composition.solids.mass_share: 60.1 %

    products.barrier.composition: [{id: monomer, name: alpha-methylstyrene, cas: 98-83-9, kind: solvent, mass_share: 0.9 %, density: 0.91 g/mL}, {id: rest, name: rest, kind: solids, mass_share: 99.1 %, density: 1.4 g/mL}]
    products.barrier.solids: {in_can: 99.1 %, sprayed: 99.1 %}

    Given second good
    products.touch-up.composition.solvent: {id: solvent, name: acetone, cas: 67-64-1, kind: solvent, mass_share: 40 %, density: 6.6 lb/gal}
Fails
    products.barrier.composition: [{id: monomer, name: alpha-methylstyrene, cas: 98-83-9, kind: solvent, mass_share: 1 %, density: 0.91 g/mL}, {id: rest, name: rest, kind: solids, mass_share: 99 %, density: 1.4 g/mL}]    # note at products.barrier.hazards.classification
    products.barrier.solids: {in_can: 99 %, sprayed: 99 %}

    products.primer.composition.solvent: {id: solvent, name: MIBK, cas: 108-10-1, kind: solvent, mass_share: 11 %, density: 0.80 g/mL}    # at products.primer.hazards.classification
    products.primer.composition.solids.mass_share: 59 %

    products.primer.composition.solvent: {id: solvent, name: IPDI, cas: 4098-71-9, kind: solvent, mass_share: 0.4 %, density: 1.06 g/mL, classes: [{id: lungs, hazard_class: respiratory_sensitisation, category: "1", limit: 1 %}, {id: skin, hazard_class: skin_sensitisation, category: "1"}, {id: breathed, hazard_class: acute_inhalation, category: "3"}, {id: airways, hazard_class: stot_single, category: "3", statement: H335}, {id: irritant, hazard_class: skin_corrosion, category: "2"}, {id: eyes, hazard_class: eye_damage, category: "2"}, {id: water, hazard_class: aquatic_chronic, category: "2"}]}    # warning at products.primer.composition.solvent.classes.lungs.limit
    products.primer.composition.solids.mass_share: 69.6 %
    products.primer.hazards.sensitisers_named: [IPDI]
    products.primer.hazards.supplemental: [EUH205, EUH208]

    products.primer.composition.solvent: {id: solvent, name: ketoxime, cas: 96-29-7, kind: solvent, mass_share: 5 %, density: 0.92 g/mL, classes: [{id: skin, hazard_class: skin_sensitisation, category: "1"}]}    # at products.primer.hazards.classification    # at products.primer.hazards.classification    # at products.primer.hazards.classification    # warning at products.primer.hazards.classification    # warning at products.primer.composition.solvent.classes
    products.primer.composition.solids.mass_share: 65 %
    products.primer.hazards.named_on_label: [resin, ketoxime]

    products.primer.composition.solvent: {id: solvent, name: methanol, cas: 67-56-1, kind: solvent, mass_share: 3 %, density: 0.79 g/mL}    # at products.primer.hazards.classification
    products.primer.composition.solids.mass_share: 67 %

    products.primer.composition.solvent: {id: solvent, name: n-butyl acetate, cas: 123-86-4, kind: solvent, mass_share: 40 %, density: 0.88 g/mL}    # warning at products.primer.hazards.classification

    Given second good
    products.touch-up.composition.solvent: {id: solvent, name: toluene, cas: 108-88-3, kind: solvent, mass_share: 40 %, density: 7.2 lb/gal}    # note at products.touch-up.hazards.classification    # note at products.touch-up.hazards.classification    # note at products.touch-up.hazards.classification

    products.primer.composition.solvent: {id: solvent, name: MIBK, cas: 108-10-1, kind: solvent, mass_share: 0.9 %, density: 0.80 g/mL, classes: [{id: eyes, hazard_class: eye_damage, category: "2"}]}    # warning at products.primer.composition.solvent.classes
    products.primer.composition.solids.mass_share: 69.1 %
To put right
    Have the classifier assess it, then declare the class and what follows from it for the label, or correct the composition.
"""

from specgen.facts.product.declared import water_has_no_law
from specgen.facts.product.harmonised import left_out, looser_limits, reached_later, reached_unsaid
from specgen.facts.product.hazard_facts import declared_classes, is_known
from specgen.rules.kit import ERROR, NOTE, WARNING, Problem, Problems, Product, Spec, date, rule, table
from specgen.trade.hazard_class import Classification, severity_rank
from specgen.trade.judged import Classified

_PHYSICAL = {"flammable_liquids", "flammable_gases"}


def _class(judged: Classified) -> Classification:
    return Classification(judged.hazard_class, judged.category, judged.statement)


def _is_declared(judged: Classified, product: Product) -> bool:
    """True where the class stands there in a category as severe."""
    declared = [found for found in declared_classes(product) if is_known(found)]
    alike = [found for found in declared if found.hazard_class == judged.hazard_class]
    if judged.statement:
        alike = [found for found in alike if found.statement == judged.statement]
    wanted = severity_rank(Classification(judged.hazard_class, judged.category))
    return any(severity_rank(found) <= wanted for found in alike)


@rule("HAZ039", on=Product, severity=ERROR, source=table("harmonised_classes").citation, waivable=False)
def harmonised_classes_declared(product: Product, spec: Spec, on: date) -> Problems:
    if product.hazards is None or not product.hazards.classification:
        return
    binding = "EU" in spec.project.jurisdictions
    for judged in reached_unsaid(product, on):
        if water_has_no_law(judged.hazard_class, spec) or _is_declared(judged, product):
            continue
        what = f"{product.id} reaches {_class(judged)} by the harmonised classes of its components, and does not declare it: {judged.why}"
        unsure = judged.statement or judged.hazard_class.startswith("acute") or not judged.source.basis.confirmed
        weight = NOTE if not binding else WARNING if unsure else None
        yield Problem(("hazards", "classification"), what, severity=weight)
    for day, judged in reached_later(product, on):
        if not water_has_no_law(judged.hazard_class, spec) and not _is_declared(judged, product):
            what = f"from {day} on {product.id} reaches {_class(judged)}, which is not declared: {judged.why}"
            yield Problem(("hazards", "classification"), what, severity=NOTE)
    less = WARNING if binding else NOTE
    for line in product.composition:
        lacking = [found for found in left_out(line, on) if found.hazard_class not in _PHYSICAL] if line.classes else []
        if lacking:
            what = f"{line.id} of {product.id} declares classes, but not the harmonised {'; '.join(map(str, lacking))}"
            yield Problem(("composition", line.id, "classes"), what, severity=less)
        for stated, by_law in looser_limits(line, on):
            what = f"{line.id} of {product.id} states a limit of {stated.limit}, where the law has {by_law.least}"
            yield Problem(("composition", line.id, "classes", stated.id, "limit"), what, severity=less)
