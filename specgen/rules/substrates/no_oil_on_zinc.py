"""SUB001 No oil-based paint on bare zinc or aluminium

Checks
    The first coat on bare zinc or aluminium: an alkyd is refused on zinc, and on aluminium unless a conversion coating precedes it; an epoxy ester is refused on hot-dip zinc.
Why
    Saponification: zinc turns the oil in the binder to soap. The paint looks sound for a season and then comes off in sheets.
Passes
    jobs.refit.items.STEP.substrate: {material: galvanized_hot_dip, thickness: 3 mm}

    products.barrier.binder: oil_alkyd
    preparations.sand-steel.steps.sand.grade: SP 11

    products.barrier.binder: oil_alkyd
    jobs.refit.items.STEP.substrate: {material: aluminium, thickness: 3 mm}
    preparations.sand-steel.steps.convert: {id: convert, do: conversion, text: Convert and rinse., unrinsed_acid: no}
Fails
    products.barrier.binder: oil_alkyd    # at systems.chassis.layers.barrier.product
    jobs.refit.items.STEP.substrate: {material: galvanized_hot_dip, thickness: 3 mm}

    products.barrier.binder: oil_alkyd
    jobs.refit.items.DOOR.system: chassis
    jobs.refit.items.STEP.substrate: {material: galvanized_electro, thickness: 3 mm}    # at systems.chassis.layers.barrier.product
    without jobs.refit.inspection.primer-film    # also JOB006 at jobs.refit.inspection

    products.barrier.binder: oil_alkyd
    jobs.refit.items.STEP.substrate: {material: aluminium, thickness: 3 mm}    # at systems.chassis.layers.barrier.product

    products.primer.binder: oil_alkyd
    jobs.refit.items.DOOR.substrate: {material: galvanized_hot_dip, thickness: 3 mm}    # at systems.cab.layers.primer.product    # also OVR001 at systems.cab.layers.base.product
To put right
    Start with an epoxy primer, a waterborne acrylic made for zinc, or a wash primer and a primer.
"""

from specgen.facts.pairs.parts import Part, painted_with
from specgen.model.preparation import StepKind
from specgen.rules.kit import ERROR, Problem, Problems, Spec, System, date, rule, table

_COATS, _MECHANISMS = table("substrate_coats"), table("mechanisms")
_SOAP = _MECHANISMS.row_citation(_MECHANISMS.row("id", "saponification"))


@rule("SUB001", on=System, severity=ERROR, source=_SOAP)
def no_oil_on_zinc(system: System, spec: Spec, on: date) -> Problems:
    first = system.layers[0]
    family = table("binder_families").row("id", spec.product_of(first).binder)
    if family["cure"] != "oxidative":
        return
    for part in painted_with(system, spec):
        if not part.is_bare_metal:
            continue
        for row in _COATS.rows:
            pair = (row["material"], row["family"], row["verdict"]) == (part.material, family["id"], "forbidden")
            if pair and not _allowed(row["unless"], part):
                what = f"{family['name']} directly on {part.name}"
                yield Problem(("layers", first.id, "product"), what, source=_COATS.row_citation(row))


def _allowed(unless: str, part: Part) -> bool:
    converted = any(step.do is StepKind.CONVERT for step in part.preparation.steps)
    return converted and "conversion_coat" in unless.split(" or ")
