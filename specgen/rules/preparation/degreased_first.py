"""PRE001 Oil and wax are removed before the surface is worked

Checks
    The first step that blasts, brushes or sands metal, plastic, laminate or an existing coating: a step of degreasing or steam cleaning, or a wash to SP 1, precedes it. Weathered zinc may be power washed instead.
Why
    Blasting and sanding do not remove oil or wax: they work it into the scratches, out of reach of any wipe, and the coat crawls and peels.
Passes
    preparations.sand-steel.steps.sand.abrasive: P150

    preparations.sand-steel.steps.degrease: {id: degrease, do: wash, text: Steam clean., grade: SP 1, acceptance: Water stays whole.}

    jobs.refit.substrate: {material: galvanized_hot_dip, thickness: 1.5 mm, zinc_state: partly_weathered}
    jobs.refit.inspection.primer-film.gauge: {principle: magnetic, correction: 60 um}
    preparations.sand-steel.steps.degrease: {id: degrease, do: wash, text: Power wash., acceptance: Water does not bead.}

    preparations.sand-steel.steps: [{id: dust, do: dust-off, text: Blow off., acceptance: No dust., cleanliness: water_break}]
    jobs.refit.substrate: {material: galvanized_hot_dip, thickness: 1.5 mm}
    jobs.refit.inspection.primer-film.gauge: {principle: magnetic, correction: 60 um}

    preparations.sand-steel.steps.degrease: {id: degrease, do: steam-clean, text: Steam clean with detergent., acceptance: Water stays whole.}
Fails
    preparations.sand-steel.steps.degrease: {id: degrease, do: dust-off, text: Blow off., cleanliness: water_break}    # at preparations.sand-steel.steps.sand

    preparations.sand-steel.steps.degrease: {id: degrease, do: wash, text: Wash with water.}    # warning at preparations.sand-steel.steps.sand
    jobs.refit.substrate.material: grp
    jobs.refit.inspection.primer-film.method: ultrasonic gauge
    jobs.refit.inspection.primer-film.gauge: {principle: ultrasonic}

    Given second good
    preparations.abrade.steps.degrease: {id: degrease, do: wash, text: Wash with water., acceptance: Water does not bead.}    # at preparations.abrade.steps.feather

    jobs.refit.items.STEP.substrate: {material: galvanized_hot_dip, thickness: 1.5 mm, zinc_state: new}
    preparations.sand-steel.steps.degrease: {id: degrease, do: wash, text: Power wash., acceptance: Water does not bead.}    # at preparations.sand-steel.steps.sand    # at preparations.sand-steel.steps.sand

    jobs.refit.items.STEP.substrate: {material: plastic}
    jobs.refit.items.STEP.preparation: scuff
    preparations.scuff: {id: scuff, title: Scuff, steps: [{id: wipe, do: dust-off, text: Wipe.}, {id: sand, do: sand, text: Sand., abrasive: P400}]}    # warning at preparations.scuff.steps.sand    # also SUB006 at systems.chassis.layers.barrier.product

    preparations.sand-steel.steps: [{id: sand, do: sand, text: Sand to an even matt surface., abrasive: P180, grade: P Ma}, {id: degrease, do: degrease, text: Degrease., acceptance: A white cloth stays white.}]    # at preparations.sand-steel.steps.sand
To put right
    Put a degreasing step first, with two cloths, one wet and one dry; on laminate remove the wax before sanding and again after it.
"""

from specgen.facts.pairs.parts import WORKING, Part, prepared_with
from specgen.model.preparation import PreparationStep, StepKind
from specgen.rules.kit import ERROR, WARNING, Preparation, Problem, Problems, Spec, date, rule, table

_TESTS = table("cleanliness_tests")
_OIL = _TESTS.row_citation(_TESTS.row("id", "degrease_first"))


@rule("PRE001", on=Preparation, severity=ERROR, source=_OIL)
def degreased_first(preparation: Preparation, spec: Spec, on: date) -> Problems:
    at = next((index for index, step in enumerate(preparation.steps) if step.do in WORKING), None)
    if at is None:
        return
    first = preparation.steps[at]
    for part in prepared_with(preparation, spec):
        if any(_cleans(step, part) for step in preparation.steps[:at]):
            continue
        path = ("steps", first.id)
        if part.kind == "metal":
            yield Problem(path, f"{first.id} works {part.name} before any degreasing step")
        elif part.kind in {"plastic", "paint"} and (asked := part.asks("clean")) is not None:
            what = f"{first.id} works {part.name} before wax and grease are removed; required: {asked[0]}"
            yield Problem(path, what, severity=WARNING, source=asked[1])


def _cleans(step: PreparationStep, part: Part) -> bool:
    weathered = part.is_zinc and part.substrate.zinc_state in {"partly_weathered", "fully_weathered"}
    return (
        step.do in {StepKind.DEGREASE, StepKind.STEAM}
        or step.grade == "SP 1"
        or (weathered and step.do is StepKind.WASH)
    )
