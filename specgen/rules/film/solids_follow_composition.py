"""FLM016 Stated volume solids agree with the composition

Checks
    Volume solids stated for a product that also states its composition, against those calculated from it.
Why
    With two figures for the same quantity it is left to chance which one the order is based on. One of them is an error, or an old formulation.
Passes
    products.primer.solids: {in_can: 17.7 %, sprayed: 30 %}

    products.primer.solids: {in_can: 20 +- 2 %, sprayed: 28..32 %}

    Given second good
    products.touch-up.solids: {sprayed: 29.6 %}

    products.primer.composition: [{id: solids, name: resin, kind: solids, mass_share: 30 %, density: 0.9 g/mL}, {id: solvent, name: solvent blend, kind: solvent, mass_share: 40 %, density: 0.9 g/mL}, {id: gas, name: propellant, kind: propellant, mass_share: 30 %, density: 0.9 g/mL}]
    products.primer.solids: {in_can: 29 %}
Fails
    products.primer.solids: {in_can: 21 +- 1 %, sprayed: 30 %}    # at products.primer.solids.in_can

    products.primer.solids: {in_can: 20 %, sprayed: 30 %}    # at products.primer.solids.in_can

    products.primer.solids: {in_can: 17.7 %, sprayed: 25 %}    # at products.primer.solids.sprayed

    products.primer.solids: {in_can: 20 %, sprayed: 25 %}    # at products.primer.solids.in_can    # at products.primer.solids.sprayed

    products.primer.solids: {sprayed: 25 %}    # at products.primer.solids.sprayed

    products.primer.composition: [{id: solids, name: resin, kind: solids, mass_share: 30 %, density: 0.9 g/mL}, {id: solvent, name: solvent blend, kind: solvent, mass_share: 40 %, density: 0.9 g/mL}, {id: gas, name: propellant, kind: propellant, mass_share: 30 %, density: 0.9 g/mL}]
    products.primer.solids: {in_can: 28.9 %}    # at products.primer.solids.in_can
To put right
    Measure the volume solids, or correct the densities; or leave the figure out so that it is calculated.
"""

from fractions import Fraction

from specgen.facts.layer.figures import computed_solids
from specgen.rules.kit import WARNING, Concern, Problem, Problems, Product, Quantity, Range, Spec, date, rule, table
from specgen.trade.known import NotKnown
from specgen.trade.solids import propellant_free_volume_solids, volume_solids
from specgen.units.quantity import lower, upper


@rule("FLM016", on=Product, severity=WARNING, concern=Concern.PRODUCT, source=table("solids_allowance").citation)
def solids_follow_composition(product: Product, spec: Spec, on: date) -> Problems:
    if product.solids is None or not product.composition:
        return
    allowed = Fraction(table("solids_allowance").rows[0]["value"])
    for name, formula in (("in_can", volume_solids), ("sprayed", propellant_free_volume_solids)):
        stated: Quantity | Range | None = getattr(product.solids, name)
        if stated is None:
            continue
        computed = computed_solids(product, f"solids-{name}-{product.id}", formula)
        if isinstance(computed, NotKnown):
            continue  # the rule on the composition says so
        beyond = max(lower(stated).to("%") - computed.number, computed.number - upper(stated).to("%"))
        if beyond > allowed:
            yield Problem(
                ("solids", name), f"volume solids {stated} are stated; the composition gives {computed.printed()}"
            )
