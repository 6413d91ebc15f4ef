"""SUB005 Polyolefin has an adhesion promoter

Checks
    Parts of polyolefin plastic (PP, PP/EPDM, TPO, PE): an adhesion promoter as first coat, or a step of flame or plasma treatment. A rigid plastic whose condition names one of them counts.
Why
    Paint does not adhere to such a surface: it comes off in one piece at the first stone chip.
Passes
    jobs.refit.items.STEP.substrate: {material: plastic_low_energy, thickness: 3 mm}
    preparations.sand-steel.steps.sand.abrasive: P180
    jobs.refit.items.STEP.preparation: plastic
    preparations.plastic: {id: plastic, title: Plastic, steps: [{id: degrease, do: degrease, text: Wipe.}, {id: scuff, do: sand, text: Scuff., abrasive: P400}, {id: flame, do: conversion, text: Pass the flame over the face., medium: flame}]}

    jobs.refit.items.STEP.substrate: {material: plastic_low_energy, thickness: 3 mm}
    jobs.refit.items.STEP.preparation: plastic
    preparations.plastic: {id: plastic, title: Plastic, steps: [{id: degrease, do: degrease, text: Wipe.}, {id: scuff, do: sand, text: Scuff., abrasive: P400}]}
    products.barrier.roles: [adhesion-promoter]
    systems.chassis.layers.barrier.role: adhesion-promoter

    jobs.refit.items.STEP.substrate: {material: plastic_low_energy, thickness: 3 mm}
    jobs.refit.items.STEP.old_coats: [{id: factory, family: epoxy_2k, thickness: 60 um, condition: sound}]
Fails
    jobs.refit.items.STEP.substrate: {material: plastic, thickness: 3 mm, condition: "Polypropylene, moulded"}    # at systems.chassis.layers.barrier.role    # also SUB006 at systems.chassis.layers.barrier.product    # also SUB014 at jobs.refit.items.STEP.substrate.condition
    jobs.refit.items.STEP.preparation: plastic
    preparations.plastic: {id: plastic, title: Plastic, steps: [{id: degrease, do: degrease, text: Wipe.}, {id: scuff, do: sand, text: Scuff., abrasive: P400}]}

    jobs.refit.items.STEP.substrate: {material: plastic_low_energy, thickness: 3 mm}    # at systems.chassis.layers.barrier.role
    jobs.refit.items.STEP.preparation: plastic
    preparations.plastic: {id: plastic, title: Plastic, steps: [{id: degrease, do: degrease, text: Wipe.}, {id: scuff, do: sand, text: Scuff., abrasive: P400}]}

    jobs.refit.items.DOOR.system: chassis
    without jobs.refit.inspection.primer-film
    jobs.refit.items.STEP.substrate: {material: plastic_low_energy, thickness: 3 mm}    # at systems.chassis.layers.barrier.role
    jobs.refit.items.STEP.preparation: plastic
    preparations.plastic: {id: plastic, title: Plastic, steps: [{id: degrease, do: degrease, text: Wipe.}, {id: scuff, do: sand, text: Scuff., abrasive: P400}, {id: change, do: conversion, text: Convert.}]}    # also FIL005 at systems.chassis.layers.barrier    # also JOB006 at jobs.refit.inspection

    jobs.refit.items.DOOR.substrate: {material: plastic_low_energy, thickness: 3 mm}    # at systems.cab.layers.primer.role    # also INS008 at jobs.refit.inspection.primer-film.gauge.principle    # also PRE017 at preparations.sand-steel.steps.sand.abrasive
To put right
    Apply an adhesion promoter first, or treat the surface with flame or plasma just before painting.
"""

import re

from specgen.facts.pairs.parts import is_treatment, painted_with
from specgen.rules.kit import WARNING, Problem, Problems, Role, Spec, System, cell_citation, date, rule

_POLYOLEFIN = re.compile(r"\b(?:[Pp]oly(?:propylene|ethylene|olefin)\w*|PP|TPO|PE|HDPE|EPDM)\b")
_SOURCE = cell_citation("substrates", "plastic_low_energy", "key")


@rule("SUB005", on=System, severity=WARNING, source=_SOURCE)
def promoter_on_polyolefin(system: System, spec: Spec, on: date) -> Problems:
    first = system.layers[0]
    for part in painted_with(system, spec):
        treated = first.role is Role.ADHESION_PROMOTER or any(map(is_treatment, part.preparation.steps))
        low = part.material == "plastic_low_energy" or (
            part.material == "plastic" and _POLYOLEFIN.search(part.substrate.condition or "") is not None
        )
        if low and not treated and part.is_bare:
            what = f"the {first.role} {first.id} is applied to {part.name} without adhesion promoter, flame or plasma treatment"
            yield Problem(("layers", first.id, "role"), what)
