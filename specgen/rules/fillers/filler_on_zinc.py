"""FIL007 Body filler is not applied to bare zinc

Checks
    Polyester body filler as the first coat on galvanised steel without an existing coating.
Why
    Body filler adheres poorly to zinc, and the alkali that zinc forms in the damp splits it off: the patch can be lifted with a fingernail.
Passes
    Given a body filler under a primer

    Given a body filler under a primer
    jobs.refit.items.STEP.substrate: {material: galvanized_hot_dip, thickness: 3 mm}
    jobs.refit.items.STEP.old_coats: [{id: factory, family: epoxy_2k, thickness: 60 um, condition: sound}]
    jobs.refit.items.STEP.strip_limit: 400 um
Fails
    Given a body filler under a primer
    jobs.refit.items.STEP.substrate: {material: galvanized_hot_dip, thickness: 3 mm}    # at systems.chassis.layers.fill

    Given a body filler under a primer
    jobs.refit.items.DOOR.system: chassis
    jobs.refit.items.STEP.substrate: {material: galvanized_electro, thickness: 3 mm}    # at systems.chassis.layers.fill
    without jobs.refit.inspection.primer-film    # also JOB006 at jobs.refit.inspection
To put right
    Apply an epoxy primer beneath the body filler, or have the manufacturer state the body filler for zinc and waive this finding.
"""

from specgen.facts.pairs.families import BODY_FILLER
from specgen.facts.pairs.parts import painted_with
from specgen.rules.kit import PRACTICE, WARNING, Problem, Problems, Spec, System, date, rule


@rule("FIL007", on=System, severity=WARNING, source=PRACTICE)
def filler_on_zinc(system: System, spec: Spec, on: date) -> Problems:
    first = system.layers[0]
    if spec.product_of(first).binder != BODY_FILLER:
        return
    for part in painted_with(system, spec):
        if part.is_zinc and part.is_bare_metal:
            yield Problem(("layers", first.id), f"the body filler {first.id} is applied to bare {part.name}")
