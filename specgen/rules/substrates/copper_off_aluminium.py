"""SUB011 No copper on aluminium under water

Checks
    Antifouling on a part of aluminium that is immersed or splashed in service, whatever coats lie between: its composition holds no copper metal or copper(I) oxide. Where the composition is not stated, name or description have to say that it is free of copper; otherwise it cannot be assessed, which is a warning. Compounds that are not galvanically active, as copper thiocyanate, are accepted.
Why
    Through any pore or scratch the copper and the aluminium become a cell in the water, and the hull is pitted through within a season.
Passes
    Given antifouling on an aluminium hull

    Given antifouling on an aluminium hull
    products.barrier.about: Antifouling for steel hulls.
    without products.barrier.solids
    products.barrier.composition: [{id: biocide, name: copper thiocyanate, cas: 1111-67-7, kind: solids, mass_share: 20 %, density: 2.8 g/mL}, {id: rest, name: resin and pigment, kind: solids, mass_share: 61 %, density: 1.5 g/mL}, {id: solvent, name: n-butyl acetate, cas: 123-86-4, kind: solvent, mass_share: 19 %, density: 0.88 g/mL}]

    Given antifouling on an aluminium hull
    without products.barrier.about
    jobs.refit.items.STEP.environment: {kind: atmosphere}
Fails
    Given antifouling on an aluminium hull
    without products.barrier.about    # warning at systems.chassis.layers.barrier.product

    Given antifouling on an aluminium hull
    without products.barrier.solids
    products.barrier.composition: [{id: biocide, name: cuprous oxide, cas: 1317-39-1, kind: solids, mass_share: 0.1 %, density: 6 g/mL}, {id: rest, name: resin and pigment, kind: solids, mass_share: 80.9 %, density: 1.5 g/mL}, {id: solvent, name: n-butyl acetate, cas: 123-86-4, kind: solvent, mass_share: 19 %, density: 0.88 g/mL}]    # at systems.chassis.layers.barrier.product
To put right
    Choose an antifouling free of copper that its manufacturer names for aluminium.
"""

import re

from specgen.facts.job.exposure import in_water
from specgen.facts.pairs.parts import painted_with
from specgen.rules.kit import ERROR, WARNING, Layer, Problem, Problems, Product, Role, Spec, System, date, rule, table

_RULES = table("galvanic_rules")
_CELL = _RULES.row_citation(_RULES.row("id", "small_anode"))
_ACTIVE = {"7440-50-8", "1317-39-1"}
_COPPER = re.compile(r"^(?:copper(?:\(I\) oxide| \(I\) oxide| powder| flakes?)?|cuprous oxide)$", re.I)
_FREE = re.compile(r"\bcopper[- ]free\b|\b(?:without|no|free (?:of|from)) copper\b", re.I)


@rule("SUB011", on=System, severity=ERROR, source=_CELL)
def copper_off_aluminium(system: System, spec: Spec, on: date) -> Problems:
    if not any(part.material == "aluminium" and in_water(part.job, part.item) for part in painted_with(system, spec)):
        return
    for layer in system.layers:
        product = spec.product_of(layer)
        if not _keeps_growth_off(layer, product):
            continue
        path = ("layers", layer.id, "product")
        held = [part.name for part in product.composition if part.cas in _ACTIVE or _COPPER.match(part.name)]
        if held:
            yield Problem(path, f"{product.id} contains {', '.join(held)} and is applied over aluminium in water")
        elif not product.composition and not _FREE.search(f"{product.name} {product.about or ''}"):
            what = f"{product.id} is applied over aluminium in water; whether it contains copper is not stated"
            remedy = "state the composition, or say in the description that it is free of copper"
            yield Problem(path, what, remedy, WARNING)


def _keeps_growth_off(layer: Layer, product: Product) -> bool:
    return layer.role is Role.ANTIFOULING or product.binder == "antifouling"
