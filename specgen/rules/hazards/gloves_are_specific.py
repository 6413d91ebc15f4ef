"""HAZ029 Gloves are specified precisely

Checks
    Gloves name their material; for a sensitising product also thickness, standard and breakthrough time, or that they are for splashes only.
Why
    “Wear gloves” is not a specification: many gloves let solvent through within a minute.
Passes
    products.primer.hazards.protection.spray.gloves: butyl 0.5 mm, EN ISO 374-1 type A, breakthrough class 3
Fails
    products.base.hazards.protection.mix: {id: mix, task: mixing, gloves: nitrile}
    products.base.hazards.protection.spray.gloves: protective gloves    # at products.base.hazards.protection.spray.gloves

    products.primer.hazards.protection.spray.gloves: nitrile    # at products.primer.hazards.protection.spray.gloves

    products.primer.hazards.protection.spray.gloves: nitrile, EN ISO 374-1, splash only    # at products.primer.hazards.protection.spray.gloves

    products.primer.hazards.protection.spray.gloves: nitrile 0.4 mm, splash only    # at products.primer.hazards.protection.spray.gloves

    Given second good
    products.gloss.hazards.protection.mix: {id: mix, task: mixing, gloves: "nitrile 0.4 mm, EN ISO 374-1"}    # at products.gloss.hazards.protection.mix.gloves
To put right
    Take material, thickness, standard and breakthrough time from section 8 of the safety data sheet.
"""

import re

from specgen.facts.product.declared import sensitises, wet_work
from specgen.rules.kit import WARNING, Basis, Problem, Problems, Product, Spec, cite, date, rule

_MATERIAL = re.compile(
    r"nitrile|butyl|neoprene|chloroprene|laminate|fluor|viton|latex|\bPVA\b|\bPVC\b|vinyl|PE/EVAL|natural rubber", re.I
)
_THICKNESS = re.compile(r"[0-9] ?(?:mm|um|mil)", re.I)
_STANDARD = re.compile(r"\b(?:EN|ISO|ASTM|ANSI)\b")
_TIME = re.compile(r"splash|breakthrough|class [0-9]|level [0-9]|[0-9] min", re.I)


@rule(
    "HAZ029",
    on=Product,
    severity=WARNING,
    source=cite("EN-ISO-374-1", "", Basis.SECONDARY),
)
def gloves_are_specific(product: Product, spec: Spec, on: date) -> Problems:
    for entry in wet_work(product.hazards) if product.hazards is not None else ():
        if entry.gloves is None:
            continue
        wanted = {"material": _MATERIAL}
        if sensitises(product):
            wanted |= {"thickness": _THICKNESS, "standard": _STANDARD, "breakthrough time or splashes only": _TIME}
        lacking = [name for name, pattern in wanted.items() if not pattern.search(entry.gloves)]
        if lacking:
            what = f"gloves for {entry.task} with {product.id} are stated without {', '.join(lacking)}: {entry.gloves}"
            yield Problem(("hazards", "protection", entry.id, "gloves"), what)
