"""HAZ028 The respirator filter suits low-boiling vapours

Checks
    A type A filter stated for spraying, against more than 1 % of contents that boil at or below 65 degC. A propellant always does. No finding where the cautions or the entry name AX or supplied air.
Why
    Type A does not retain dimethyl ether, propane, butane or acetone: they break through within minutes.
Passes
    products.primer.hazards.protection.spray.respiratory: half mask A2P3, EN 14387; supplied air where air is poor

    products.barrier.hazards.protection.spray.respiratory: half mask A2P3, EN 14387

    products.primer.hazards.protection.spray.respiratory: half mask A2P3, EN 14387
    products.primer.hazards.cautions: [{id: ax, task: spraying, text: Type AX is worn where cans are sprayed.}]

    products.barrier.composition: [{id: resin, name: resin, kind: solids, mass_share: 99 %, density: 1.4 g/mL}, {id: low, name: acetone, cas: 67-64-1, kind: solvent, mass_share: 1 %, density: 0.79 g/mL}]
    without products.barrier.solids
    products.barrier.hazards.protection.spray.respiratory: half mask A2P3, EN 14387
Fails
    products.primer.hazards.protection.spray.respiratory: half mask A2P3, EN 14387    # at products.primer.hazards.protection.spray.respiratory

    Given second good
    products.touch-up.hazards.protection.spray.respiratory: half mask A2P3, EN 14387    # at products.touch-up.hazards.protection.spray.respiratory

    products.barrier.composition: [{id: resin, name: resin, kind: solids, mass_share: 98.9 %, density: 1.4 g/mL}, {id: low, name: acetone, cas: 67-64-1, kind: solvent, mass_share: 1.1 %, density: 0.79 g/mL}]
    without products.barrier.solids
    products.barrier.hazards.protection.spray.respiratory: half mask A2P3, EN 14387    # at products.barrier.hazards.protection.spray.respiratory

    products.barrier.composition: [{id: resin, name: resin, kind: solids, mass_share: 90 %, density: 1.4 g/mL}, {id: low, name: secret blend, kind: solvent, mass_share: 10 %, density: 0.79 g/mL}]
    without products.barrier.solids
    products.barrier.hazards.protection.spray.respiratory: half mask A2P3, EN 14387    # note at products.barrier.hazards.protection.spray.respiratory
To put right
    Name type AX, supplied air, or a caution that type A is not rated for these vapours and what governs instead.
"""

from specgen.facts.product.declared import is_type_a, names_air_fed, spraying
from specgen.facts.product.hazard_facts import boils_low
from specgen.rules.kit import NOTE, WARNING, Basis, Problem, Problems, Product, Quantity, Spec, cite, date, rule


@rule(
    "HAZ028",
    on=Product,
    severity=WARNING,
    source=cite("EN-14387", "type ranges", Basis.SECONDARY),
)
def filter_fits_the_vapour(product: Product, spec: Spec, on: date) -> Problems:
    if product.hazards is None:
        return
    least = Quantity.of("share", 1, "%")
    lines = [line for line in product.composition if line.mass_share > least]
    low = [line.name for line in lines if boils_low(line)]
    unknown = [line.name for line in lines if boils_low(line) is None]
    told = " ".join(caution.text for caution in product.hazards.cautions)
    for entry in spraying(product.hazards):
        text = f"{entry.respiratory or ''} {told}"
        if not is_type_a(text) or names_air_fed(text):
            continue
        path = ("hazards", "protection", entry.id, "respiratory")
        if low:
            what = f"a type A filter is stated, but is not rated for low-boiling contents of {product.id}: {', '.join(low)}"
            yield Problem(path, what)
        elif unknown:
            what = f"whether a type A filter is suitable cannot be assessed: the boiling point of {', '.join(unknown)} is not known"
            yield Problem(path, what, severity=NOTE)
