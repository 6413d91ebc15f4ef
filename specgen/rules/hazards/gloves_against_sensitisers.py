"""HAZ030 Gloves are stated wherever a sensitiser, or what is absorbed through the skin, is handled

Checks
    Every protection entry for work with the wet product names gloves, where the product is sensitising, or where a component of its composition has a skin notation in the table exposure_limits.
Why
    Skin allergy is lifelong, and one can sprayed without gloves can start it. A solvent with a skin notation enters the body through bare hands, and a mask does not help.
Passes
    products.primer.hazards.protection.mix: {id: mix, task: clean-up, gloves: "nitrile 0.4 mm, EN ISO 374-1, splash only"}

    products.base.hazards.protection.mix: {id: mix, task: clean-up, eyes: goggles}
Fails
    products.primer.hazards.protection.mix: {id: mix, task: clean-up, eyes: goggles}    # at products.primer.hazards.protection.mix.gloves

    Given second good
    products.mastic.hazards.protection.mix: {id: mix, task: mixing, gloves: none needed}    # at products.mastic.hazards.protection.mix.gloves    # also HAZ029 at products.mastic.hazards.protection.mix.gloves

    products.primer.hazards.protection: [{id: spray, task: spraying, respiratory: "half mask AXP3, EN 140 and EN 14387", eyes: goggles, skin: overall}, {id: all, task: any, gloves: "nitrile 0.4 mm, EN ISO 374-1, splash only"}]    # at products.primer.hazards.protection.spray.gloves

    products.primer.hazards.protection.spray.gloves: no gloves    # at products.primer.hazards.protection.spray.gloves    # also HAZ029 at products.primer.hazards.protection.spray.gloves

    Given second good
    without products.mastic.hazards.protection.spray.gloves    # also HAZ004 at products.mastic.hazards.protection.spray.gloves
    products.mastic.hazards.protection.sand: {id: sand, task: sanding, eyes: goggles}
    products.gloss.hazards.protection.mix: {id: mix, task: mixing, eyes: goggles}    # at products.gloss.hazards.protection.mix.gloves

    products.base.solids: {in_can: 18.4 %, sprayed: 31.5 %}
    products.base.composition: [{id: resin, name: resin, kind: solids, mass_share: 30 %, density: 1.5 g/mL}, {id: solvent, name: 1-methoxy-2-propanol, cas: 107-98-2, kind: solvent, mass_share: 40 %, density: 0.92 g/mL}, {id: gas, name: dimethyl ether, cas: 115-10-6, kind: propellant, mass_share: 30 %, density: 0.66 g/mL}]
    products.base.hazards.named_on_label: [1-methoxy-2-propanol]
    products.base.hazards.protection.mix: {id: mix, task: mixing, eyes: goggles}    # at products.base.hazards.protection.mix.gloves
To put right
    State gloves for the task.
"""

import re

from specgen.facts.product.absorbed import absorbed
from specgen.facts.product.declared import sensitises, spraying, wet_work
from specgen.rules.kit import WARNING, Basis, Problem, Problems, Product, Spec, cite, date, rule

_NONE = re.compile(r"^(?:none|no\b|not )", re.I)


@rule(
    "HAZ030",
    on=Product,
    severity=WARNING,
    source=cite("CLP", "Annex I, Table 3.4.7, P280", Basis.REGULATION),
)
def gloves_against_sensitisers(product: Product, spec: Spec, on: date) -> Problems:
    if product.hazards is None:
        return
    allergy, noted = sensitises(product), absorbed(product)
    if not allergy and noted is None:
        return
    lone = len(wet_work(product.hazards)) == 1
    for entry in wet_work(product.hazards):
        bare = entry.gloves is not None and _NONE.search(entry.gloves)
        # A lone spraying entry without gloves is told by the rule on protection for spraying.
        if bare or (entry.gloves is None and not (lone and entry in spraying(product.hazards))):
            kind = "is sensitising" if allergy else "contains a component that is absorbed through the skin"
            what = f"{product.id} {kind}, but no gloves are stated for {entry.task}"
            source = None if allergy else noted
            yield Problem(("hazards", "protection", entry.id, "gloves"), what, source=source)
