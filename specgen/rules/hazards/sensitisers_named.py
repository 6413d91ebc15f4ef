"""HAZ025 A sensitiser below its classification limit is named (EUH208)

Checks
    Where the composition contains a sensitiser at or above the concentration from which it must be named, and it is not the one that gives the product its class, EUH208 is on the label and names it. With a specific limit that is a tenth of it. Isocyanate and epoxy covered by EUH204 or EUH205 need no name.
Why
    People who are already allergic react to far less than it takes to become allergic.
Passes
    products.primer.composition.solids.classes: [{id: skin, hazard_class: skin_sensitisation, category: 1}]

    products.barrier.solids: {in_can: 99.8 %, sprayed: 99.8 %}
    products.barrier.composition: [{id: oxime, name: oxime, kind: solvent, mass_share: 0.1 %, density: 0.9 g/mL, classes: [{id: lungs, hazard_class: respiratory_sensitisation, category: "1", limit: 2 %}]}, {id: rest, name: rest, kind: solids, mass_share: 99.9 %, density: 1.4 g/mL}]

    products.primer.composition.solids: {id: solids, name: resin and pigment, kind: solids, mass_share: 29.5 %, density: 1.5 g/mL, classes: [{id: skin, hazard_class: skin_sensitisation, category: "1"}]}
    products.primer.composition.acrylate: {id: acrylate, name: acrylate, kind: solids, mass_share: 0.5 %, density: 1.1 g/mL, classes: [{id: skin, hazard_class: skin_sensitisation, category: "1"}]}
    products.primer.hazards.epoxy_up_to_700: yes

    products.barrier.solids: {in_can: 98 %, sprayed: 98 %}
    products.barrier.hazards.supplemental: [EUH205, EUH208]
    products.barrier.hazards.sensitisers_named: [oxime, ester]
    products.barrier.composition: [{id: oxime, name: oxime, kind: solvent, mass_share: 0.5 %, density: 0.9 g/mL, classes: [{id: lungs, hazard_class: respiratory_sensitisation, category: 1}]}, {id: ester, name: ester, kind: solvent, mass_share: 0.5 %, density: 0.9 g/mL, classes: [{id: lungs, hazard_class: respiratory_sensitisation, category: 1}]}, {id: rest, name: rest, kind: solids, mass_share: 99 %, density: 1.4 g/mL}]
Fails
    products.barrier.solids: {in_can: 99.7 %, sprayed: 99.7 %}
    products.barrier.composition: [{id: oxime, name: oxime, kind: solvent, mass_share: 0.2 %, density: 0.9 g/mL, classes: [{id: lungs, hazard_class: respiratory_sensitisation, category: "1", limit: 2 %}]}, {id: rest, name: rest, kind: solids, mass_share: 99.8 %, density: 1.4 g/mL}]    # at products.barrier.hazards.supplemental

    products.primer.composition.solids: {id: solids, name: resin and pigment, kind: solids, mass_share: 29.5 %, density: 1.5 g/mL, classes: [{id: skin, hazard_class: skin_sensitisation, category: "1"}]}
    products.primer.composition.oxime: {id: oxime, name: oxime, kind: solvent, mass_share: 0.5 %, density: 0.9 g/mL, classes: [{id: skin, hazard_class: skin_sensitisation, category: "1"}]}    # at products.primer.hazards.supplemental

    products.barrier.composition: [{id: oxime, name: oxime, kind: solvent, mass_share: 0.5 %, density: 0.9 g/mL, classes: [{id: lungs, hazard_class: respiratory_sensitisation, category: 1}]}, {id: rest, name: rest, kind: solids, mass_share: 99.5 %, density: 1.4 g/mL}]    # at products.barrier.hazards.supplemental
    products.barrier.solids: {in_can: 99 %, sprayed: 99 %}

    products.base.hazards.supplemental: [EUH208]    # at products.base.hazards.sensitisers_named

    products.barrier.hazards.supplemental: [EUH205, EUH208]    # at products.barrier.hazards.sensitisers_named

    products.barrier.solids: {in_can: 98 %, sprayed: 98 %}
    products.barrier.hazards.supplemental: [EUH205, EUH208]
    products.barrier.hazards.sensitisers_named: [oxime]
    products.barrier.composition: [{id: oxime, name: oxime, kind: solvent, mass_share: 0.5 %, density: 0.9 g/mL, classes: [{id: lungs, hazard_class: respiratory_sensitisation, category: 1}]}, {id: ester, name: ester, kind: solvent, mass_share: 0.5 %, density: 0.9 g/mL, classes: [{id: lungs, hazard_class: respiratory_sensitisation, category: 1}]}, {id: rest, name: rest, kind: solids, mass_share: 99 %, density: 1.4 g/mL}]    # at products.barrier.hazards.sensitisers_named

    products.barrier.solids: {in_can: 98 %, sprayed: 98 %}
    products.barrier.hazards.supplemental: [EUH205, EUH208]
    products.barrier.hazards.sensitisers_named: [ester]
    products.barrier.composition: [{id: oxime, name: oxime, kind: solvent, mass_share: 0.5 %, density: 0.9 g/mL, classes: [{id: lungs, hazard_class: respiratory_sensitisation, category: 1}]}, {id: ester, name: ester, kind: solvent, mass_share: 0.5 %, density: 0.9 g/mL, classes: [{id: lungs, hazard_class: respiratory_sensitisation, category: 1}]}, {id: rest, name: rest, kind: solids, mass_share: 99 %, density: 1.4 g/mL}]    # at products.barrier.hazards.sensitisers_named
To put right
    Add EUH208 and name each substance under sensitisers_named.
"""

from specgen.facts.product.declared import in_europe
from specgen.facts.product.hazards import hazards_of
from specgen.rules.kit import ERROR, Basis, Problem, Problems, Product, Spec, cite, date, rule
from specgen.trade.hazard_class import Element

CODE = "EUH208"


@rule(
    "HAZ025",
    on=Product,
    severity=ERROR,
    source=cite("CLP", "Annex I, Table 3.4.6, and Annex II, 2.8", Basis.REGULATION),
    waivable=False,
)
def sensitisers_named(product: Product, spec: Spec, on: date) -> Problems:
    hazards = product.hazards
    if hazards is None or not in_europe(spec):
        return
    if CODE in hazards.supplemental and not hazards.sensitisers_named:
        yield Problem(("hazards", "sensitisers_named"), f"{product.id} carries {CODE} but names no substance")
        return
    for wanted in hazards_of(spec, product.id, on).supplemental:
        if not isinstance(wanted, Element) or wanted.code != CODE:
            continue
        for reason in wanted.reasons:
            name = reason.rsplit(", ", 2)[0]
            if name not in hazards.sensitisers_named:
                what = f"{product.id} contains a sensitiser that is not named: {reason}"
                path = "sensitisers_named" if CODE in hazards.supplemental else "supplemental"
                yield Problem(("hazards", path), what, source=wanted.source)
