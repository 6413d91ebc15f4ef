"""HAZ010 A heat of combustion states its source

Checks
    A stated heat of combustion has a source, and agrees with the total over the composition where the heat of combustion of every component is known.
Why
    The category of an aerosol can depend on this figure; without its source it cannot be checked.
Passes
    products.base.hazards.heat_of_combustion: {heat: 24 kJ/g, source: test report TR-18}

    products.barrier.composition: [{id: ester, name: butyl acetate, cas: 123-86-4, kind: solvent, mass_share: 50 %, density: 0.88 g/mL}, {id: resin, name: resin, kind: solids, mass_share: 50 %, density: 0.88 g/mL}]
    products.barrier.hazards.classification.vapour: {id: vapour, hazard_class: stot_single, category: 3, statement: H336}
    products.barrier.hazards.statements: [H226, H315, H317, H319, H336]
    products.barrier.hazards.heat_of_combustion: {heat: 29.5317 kJ/g, source: test report TR-18}

    products.barrier.composition: [{id: ester, name: butyl acetate, cas: 123-86-4, kind: solvent, mass_share: 50 %, density: 0.88 g/mL}, {id: resin, name: resin, kind: solids, mass_share: 50 %, density: 0.88 g/mL}]
    products.barrier.hazards.classification.vapour: {id: vapour, hazard_class: stot_single, category: 3, statement: H336}
    products.barrier.hazards.statements: [H226, H315, H317, H319, H336]
    products.barrier.hazards.heat_of_combustion: {heat: 24.1623 kJ/g, source: test report TR-18}
Fails
    products.base.hazards.heat_of_combustion: {heat: 24 kJ/g}    # at products.base.hazards.heat_of_combustion.source

    Given second good
    products.touch-up.hazards.heat_of_combustion: {heat: 24 kJ/g}    # at products.touch-up.hazards.heat_of_combustion.source

    products.barrier.composition: [{id: ester, name: butyl acetate, cas: 123-86-4, kind: solvent, mass_share: 100 %, density: 0.88 g/mL}]
    products.barrier.hazards.classification.vapour: {id: vapour, hazard_class: stot_single, category: 3, statement: H336}
    products.barrier.hazards.statements: [H226, H315, H317, H319, H336]
    products.barrier.hazards.heat_of_combustion: {heat: 29.5318 kJ/g, source: test report TR-18}    # at products.barrier.hazards.heat_of_combustion.heat    # also FLM015 at products.barrier.solids.in_can    # also FLM015 at products.barrier.solids.sprayed

    products.barrier.composition: [{id: ester, name: butyl acetate, cas: 123-86-4, kind: solvent, mass_share: 100 %, density: 0.88 g/mL}]
    products.barrier.hazards.classification.vapour: {id: vapour, hazard_class: stot_single, category: 3, statement: H336}
    products.barrier.hazards.statements: [H226, H315, H317, H319, H336]
    products.barrier.hazards.heat_of_combustion: {heat: 24.1622 kJ/g, source: test report TR-18}    # at products.barrier.hazards.heat_of_combustion.heat    # also FLM015 at products.barrier.solids.in_can    # also FLM015 at products.barrier.solids.sprayed
To put right
    Name the test report or the formula, and take the figure from it.
"""

from fractions import Fraction

from specgen.facts.product.figures import heat
from specgen.rules.kit import NOTE, WARNING, Basis, Problem, Problems, Product, Spec, cite, date, rule, table
from specgen.trade.known import NotKnown


@rule(
    "HAZ010",
    on=Product,
    severity=WARNING,
    source=cite("DIR-75-324", "", Basis.REGULATION),
)
def heat_has_a_source(product: Product, spec: Spec, on: date) -> Problems:
    stated = product.hazards.heat_of_combustion if product.hazards is not None else None
    if stated is None:
        return
    path = ("hazards", "heat_of_combustion")
    if stated.source is None:
        yield Problem((*path, "source"), f"the heat of combustion of {product.id} has no source")
    computed = heat(product)
    if isinstance(computed, NotKnown) and not computed.is_fault:
        return
    if isinstance(computed, NotKnown):
        yield Problem(
            (*path, "heat"), f"the heat of combustion of {product.id} cannot be assessed: {computed.why}", severity=NOTE
        )
        return
    row = table("hazard_tolerances").row("id", "heat")
    if abs(stated.heat.to("kJ/g") - computed.number) > computed.number * Fraction(row["figure"]) / 100:
        what = f"the heat of combustion of {product.id} is stated as {stated.heat}; its composition gives {computed.printed()}"
        yield Problem((*path, "heat"), what, source=table("hazard_tolerances").citation)
