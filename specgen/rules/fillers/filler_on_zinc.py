"""FIL007 Body filler does not stand on bare zinc

Checks
    Polyester body filler as the first coat on galvanised steel without old paint.
Why
    Filler grips zinc poorly, and what alkali the zinc makes in the damp splits it off: the patch can be lifted with a nail.
Passes
    products.barrier.binder: polyester_putty
    products.barrier.roles: [body-filler]
    products.barrier.overcoat: [{id: primer, by: primer, window: 90 min..24 h, air: 20 degC}]
    systems.chassis.layers: [{id: fill, role: body-filler, product: barrier, variant: standard, film: {min: 60 um, nominal: 80 um, max: 120 um}, coats: 1, hold: 2 h..24 h}, {id: grey, role: primer, product: primer, variant: grey, film: {min: 40 um, nominal: 60 um, max: 80 um}, passes: 4}]
    jobs.refit.climate.air: 20..25 degC
Fails
    products.barrier.binder: polyester_putty
    products.barrier.roles: [body-filler]
    products.barrier.overcoat: [{id: primer, by: primer, window: 90 min..24 h, air: 20 degC}]
    systems.chassis.layers: [{id: fill, role: body-filler, product: barrier, variant: standard, film: {min: 60 um, nominal: 80 um, max: 120 um}, coats: 1, hold: 2 h..24 h}, {id: grey, role: primer, product: primer, variant: grey, film: {min: 40 um, nominal: 60 um, max: 80 um}, passes: 4}]    # at systems.chassis.layers.fill
    jobs.refit.climate.air: 20..25 degC
    jobs.refit.items.STEP.substrate: {material: galvanized_hot_dip, thickness: 3 mm}
To put right
    Put an epoxy primer below the filler, or have the maker state the filler for zinc and waive this.
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
            yield Problem(("layers", first.id), f"the body filler {first.id} stands on bare {part.name}")
