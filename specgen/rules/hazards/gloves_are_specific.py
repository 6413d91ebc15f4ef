"""HAZ029 Gloves are specified precisely

Checks
    Gloves name their material; for a sensitising product also thickness, standard and breakthrough time, or that they are for splashes only. What the gloves of every such product of the folder lack is told once, at the first of them.
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

    Given second good
    products.mastic.hazards.protection.spray.gloves: nitrile    # at products.mastic.hazards.protection.spray.gloves
To put right
    Take material, thickness, standard and breakthrough time from section 8 of the safety data sheet.
"""

import re

from specgen.facts.memo import memoised
from specgen.facts.product.declared import sensitises, wet_work
from specgen.model.hazards import Protection
from specgen.rules.kit import WARNING, Basis, Problem, Problems, Product, Spec, cite, date, rule

_MATERIAL = re.compile(
    r"nitrile|butyl|neoprene|chloroprene|laminate|fluor|viton|latex|\bPVA\b|\bPVC\b|vinyl|PE/EVAL|natural rubber", re.I
)
_THICKNESS = re.compile(r"[0-9] ?(?:mm|um|mil)", re.I)
_STANDARD = re.compile(r"\b(?:EN|ISO|ASTM|ANSI)\b")
_TIME = re.compile(r"splash|breakthrough|class [0-9]|level [0-9]|[0-9] min", re.I)

_WANTED = {
    "material": _MATERIAL,
    "thickness": _THICKNESS,
    "standard": _STANDARD,
    "breakthrough time or splashes only": _TIME,
}


@rule(
    "HAZ029",
    on=Product,
    severity=WARNING,
    source=cite("EN-ISO-374-1", "", Basis.SECONDARY),
)
def gloves_are_specific(product: Product, spec: Spec, on: date) -> Problems:
    first, throughout = _lacking_throughout(spec)
    told: dict[tuple[str, tuple[str, ...]], list[Protection]] = {}
    for entry in _with_gloves(product):
        lacking = _lacking(entry, product)
        if product.id == first and throughout:
            told.setdefault(("", throughout), []).append(entry)
        own = tuple(name for name in lacking if name not in throughout)
        if own:
            told.setdefault((entry.gloves or "", own), []).append(entry)
    for (gloves, lacking), entries in told.items():
        tasks, path = ", ".join(entry.task for entry in entries), ("hazards", "protection", entries[0].id, "gloves")
        what = f"gloves for {tasks} with {product.id} are stated without {', '.join(lacking)}: {gloves}"
        if not gloves:
            what = f"every sensitising product of this folder states its gloves without {', '.join(lacking)}; the first is {product.id}: {entries[0].gloves}"
        yield Problem(path, what)


@memoised
def _lacking_throughout(spec: Spec) -> tuple[str, tuple[str, ...]]:
    """What the gloves of every sensitising product lack for every task, and the first of these products; nothing where there is one alone."""
    of_each = {
        product.id: [set(_lacking(entry, product)) for entry in _with_gloves(product)]
        for product in spec.products.values()
        if sensitises(product) and _with_gloves(product)
    }
    if len(of_each) < 2:
        return "", ()
    common = set.intersection(*(lacking for entries in of_each.values() for lacking in entries))
    return next(iter(of_each)), tuple(name for name in _WANTED if name in common)


def _with_gloves(product: Product) -> list[Protection]:
    return [entry for entry in wet_work(product.hazards) if entry.gloves is not None] if product.hazards else []


def _lacking(entry: Protection, product: Product) -> tuple[str, ...]:
    asked = _WANTED if sensitises(product) else {"material": _MATERIAL}
    return tuple(name for name, pattern in asked.items() if not pattern.search(entry.gloves or ""))
