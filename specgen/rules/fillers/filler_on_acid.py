"""FIL006 Body filler is not applied over acid

Checks
    Each coat of polyester body filler applied directly over a wash or etch primer, or over metal with acid left by a conversion step.
Why
    Acid disturbs the peroxide that hardens the body filler: its underside stays soft and it drops off in one piece.
Passes
    Given a body filler under a primer

    Given a body filler under a primer
    preparations.sand-steel.steps.dust: {id: dust, do: conversion, text: Phosphate and rinse., unrinsed_acid: no}
Fails
    Given a body filler under a primer
    jobs.refit.items.STEP.preparation: converted
    preparations.converted: {id: converted, title: Rust converter, steps: [{id: degrease, do: degrease, text: Degrease., acceptance: The cloth stays white.}, {id: sand, do: sand, text: Sand., abrasive: P120, grade: P Ma}, {id: convert, do: conversion, text: Brush rust converter on., unrinsed_acid: yes}], coat_within: 4 h}    # at systems.chassis.layers.fill

    Given a body filler under a primer
    preparations.sand-steel.steps.dust: {id: dust, do: conversion, text: Phosphate.}    # note at systems.chassis.layers.fill    # also FIL005 at systems.cab.layers.primer

    products.primer.binder: etch_primer_1k
    products.base.binder: polyester_putty    # at systems.cab.layers.base    # also FIL010 at systems.cab.layers.base    # also FIL011 at systems.cab.layers.base.overcoat_interval    # also FIL012 at jobs.refit.climate.air
To put right
    Apply body filler to bare sanded metal, or to cured and scuffed epoxy primer.
"""

from specgen.facts.pairs.acids import acid_below, stacked
from specgen.facts.pairs.families import BODY_FILLER
from specgen.rules.kit import NOTE, PRACTICE, WARNING, Problem, Problems, Spec, System, date, rule


@rule("FIL006", on=System, severity=WARNING, source=PRACTICE)
def filler_on_acid(system: System, spec: Spec, on: date) -> Problems:
    for below, layer in stacked(system):
        if spec.product_of(layer).binder != BODY_FILLER:
            continue
        for acid, known in acid_below(below, system, spec):
            path = ("layers", layer.id)
            if known:
                yield Problem(path, f"the body filler {layer.id} is applied directly over {acid}")
            else:
                what = f"the body filler {layer.id} over {acid} cannot be assessed: whether the acid is rinsed off is not stated"
                yield Problem(path, what, "state unrinsed_acid: yes or no for the conversion step", NOTE)
