"""FIL004 A wash primer is applied to bare metal only

Checks
    Each coat of wash primer: no coat, no existing coating and no conversion step lies beneath it. Around a repaired or feathered spot the existing coating is masked, or the step that lays it bare says so; where no step masks it, this is a note.
Why
    Its acid etches bare metal. On paint or a converted surface it has nothing to react with and lifts the edge of the existing coating.
Passes
    Given a wash primer under a primer

    Given a wash primer under a primer
    jobs.refit.items.STEP.old_coats: [{id: factory, family: epoxy_2k, thickness: 60 um, condition: sound}]
    jobs.refit.items.STEP.repair: {feather: 20 mm, sanded: 50 mm, lap: 25 mm}
    preparations.sand-steel.steps.mask: {id: mask, do: mask, text: Mask the old paint.}

    Given a wash primer under a primer
    jobs.refit.items.STEP.old_coats: [{id: factory, family: epoxy_2k, thickness: 60 um, condition: sound}]
    preparations.sand-steel.steps.feather: {id: feather, do: feather-edge, text: Feather the edges of old paint., abrasive: "P150, then P180", acceptance: No step under a fingernail.}
    preparations.sand-steel.steps.mask: {id: mask, do: mask, text: Mask the old paint.}
Fails
    Given a wash primer under a primer
    preparations.sand-steel.steps.dust: {id: dust, do: conversion, text: Phosphate and rinse., unrinsed_acid: no}    # at systems.chassis.layers.wash

    Given a wash primer under a primer
    jobs.refit.items.STEP.old_coats: [{id: factory, family: epoxy_2k, thickness: 60 um, condition: sound}]    # at systems.chassis.layers.wash

    Given a wash primer under a primer
    jobs.refit.items.STEP.old_coats: [{id: factory, family: epoxy_2k, thickness: 60 um, condition: sound}]    # note at systems.chassis.layers.wash
    jobs.refit.items.STEP.repair: {feather: 20 mm, sanded: 50 mm, lap: 25 mm}

    products.base.binder: wash_primer    # at systems.cab.layers.base    # also FIL001 at systems.cab.layers.base    # also FIL002 at systems.cab.layers.base.film.max    # also FIL003 at jobs.refit.climate.humidity
To put right
    Use it on bare degreased metal only; on paint or converted metal start with an epoxy primer.
"""

from specgen.facts.pairs.acids import stacked
from specgen.facts.pairs.parts import Part, is_treatment, painted_with
from specgen.model.preparation import StepKind
from specgen.rules.kit import ERROR, NOTE, Citation, Problem, Problems, Spec, System, date, rule, table

_MATRIX = table("overcoat_matrix")


def _said_of(old: str) -> Citation:
    (row,) = [row for row in _MATRIX.rows if (row["new"], row["old"]) == ("wash_primer", old)]
    return _MATRIX.row_citation(row)


@rule("FIL004", on=System, severity=ERROR, source=_said_of("any_old_paint"))
def wash_primer_on_metal(system: System, spec: Spec, on: date) -> Problems:
    for below, layer in stacked(system):
        path = ("layers", layer.id)
        if spec.product_of(layer).binder != "wash_primer":
            continue
        if below is not None:
            yield Problem(path, f"the wash primer {layer.id} is applied over the coat {below.id}")
            continue
        for part in painted_with(system, spec):
            if part.old_paint:
                yield from _on_old_paint(part, layer.id)
            converted = any(s.do is StepKind.CONVERT and not is_treatment(s) for s in part.preparation.steps)
            if converted:
                what = f"the wash primer {layer.id} is applied to {part.name} converted by {part.preparation.id}"
                yield Problem(path, what, source=_said_of("treated_steel"))


def _on_old_paint(part: Part, layer: str) -> Problems:
    top = part.old_paint[-1].id
    if not part.is_repair:
        yield Problem(("layers", layer), f"the wash primer {layer} is applied over the existing coat {top}")
    elif not part.masks:
        what = f"the wash primer {layer} is for the bare spot, but no step masks the existing coat {top} around it"
        yield Problem(
            ("layers", layer),
            what,
            "keep it to the bare metal: mask the existing coating, or spray the spot alone",
            NOTE,
        )
