"""SUB006 Strong solvents on plastic are tested first

Checks
    A first coat with strong solvents on bare rigid plastic, unless the table names its generic type as a first coat there, it is an adhesion promoter, which is made for plastics, or the preparation includes a test step.
Why
    Strong solvents craze ABS, PC, PMMA and polystyrene under stress: fine cracks that run through the part.
Passes
    jobs.refit.items.STEP.substrate: {material: plastic, thickness: 3 mm}
    jobs.refit.items.STEP.preparation: plastic
    preparations.plastic: {id: plastic, title: Plastic, steps: [{id: degrease, do: degrease, text: Wipe.}, {id: scuff, do: sand, text: Scuff., abrasive: P400}, {id: patch, do: test, text: Coat a hidden patch and look for crazing after a day.}]}

    products.barrier.binder: acrylic_wb
    jobs.refit.items.STEP.substrate: {material: plastic, thickness: 3 mm}
    jobs.refit.items.STEP.preparation: plastic
    preparations.plastic: {id: plastic, title: Plastic, steps: [{id: degrease, do: degrease, text: Wipe.}, {id: scuff, do: sand, text: Scuff., abrasive: P400}]}

    jobs.refit.items.STEP.substrate: {material: plastic, thickness: 3 mm}
    jobs.refit.items.STEP.old_coats: [{id: factory, family: epoxy_2k, thickness: 60 um, condition: sound}]

    jobs.refit.items.STEP.substrate: {material: grp, thickness: 3 mm}
Fails
    jobs.refit.items.STEP.substrate: {material: plastic, thickness: 3 mm}    # at systems.chassis.layers.barrier.product
    jobs.refit.items.STEP.preparation: plastic
    preparations.plastic: {id: plastic, title: Plastic, steps: [{id: degrease, do: degrease, text: Wipe.}, {id: scuff, do: sand, text: Scuff., abrasive: P400}]}

    jobs.refit.items.DOOR.system: chassis
    without jobs.refit.inspection.primer-film
    jobs.refit.items.STEP.substrate: {material: plastic, thickness: 3 mm}    # at systems.chassis.layers.barrier.product
    jobs.refit.items.STEP.preparation: plastic
    preparations.plastic: {id: plastic, title: Plastic, steps: [{id: degrease, do: degrease, text: Wipe.}, {id: scuff, do: sand, text: Scuff., abrasive: P400}]}    # also JOB006 at jobs.refit.inspection

    jobs.refit.items.DOOR.substrate: {material: plastic, thickness: 3 mm}    # at systems.cab.layers.primer.product    # also INS008 at jobs.refit.inspection.primer-film.gauge.principle    # also PRE017 at preparations.sand-steel.steps.sand.abrasive
To put right
    Start with a mild plastic primer, or add a step that tests the coat on a hidden area.
"""

from specgen.facts.pairs.parts import painted_with
from specgen.model.preparation import StepKind
from specgen.rules.kit import PRACTICE, WARNING, Problem, Problems, Role, Spec, System, date, rule, table


@rule("SUB006", on=System, severity=WARNING, source=PRACTICE)
def solvent_on_plastic(system: System, spec: Spec, on: date) -> Problems:
    first = system.layers[0]
    if first.role is Role.ADHESION_PROMOTER:
        return
    family = table("binder_families").row("id", spec.product_of(first).binder)
    for part in painted_with(system, spec):
        if part.material != "plastic" or not part.is_bare or family["solvent_strength"] != "strong":
            continue
        tried = any(step.do is StepKind.TEST for step in part.preparation.steps)
        if not tried and not _named_first(part.material, family["id"]):
            what = f"the strong solvents of {family['name']} on bare {part.name} without a test patch"
            yield Problem(("layers", first.id, "product"), what)


def _named_first(material: str, family: str) -> bool:
    wanted = (material, family, "first coat")
    return any((row["material"], row["family"], row["verdict"]) == wanted for row in table("substrate_coats").rows)
