"""PRE001 Oil and wax are removed before the surface is worked

Checks
    The first step that blasts, brushes or sands metal, plastic, laminate or an existing coating: a step of degreasing or steam cleaning precedes it, or a wash to SP 1, with a detergent, or shown to be free of oil by a test. A wash that says none of these gives a warning, or a note where it states how its result is seen. Burrs and spatter may be dressed by tools before the part is degreased, and then sanded or blasted. Weathered zinc may be power washed instead.
Why
    Blasting and sanding do not remove oil or wax: they work it into the scratches, out of reach of any wipe, and the coat crawls and peels.
Passes
    preparations.sand-steel.steps.sand.abrasive: P150

    preparations.sand-steel.steps.degrease: {id: degrease, do: wash, text: Steam clean., grade: SP 1, acceptance: Water stays whole.}

    jobs.refit.substrate: {material: galvanized_hot_dip, thickness: 1.5 mm, zinc_state: partly_weathered}
    jobs.refit.inspection.primer-film.gauge: {principle: magnetic, correction: 60 um}
    preparations.sand-steel.steps.degrease: {id: degrease, do: wash, text: Power wash., acceptance: Water does not bead.}

    preparations.sand-steel.steps: [{id: dust, do: dust-off, text: Blow off., acceptance: No dust., cleanliness: water_break}]
    jobs.refit.substrate: {material: galvanized_hot_dip, thickness: 1.5 mm, zinc_state: fully_weathered}
    jobs.refit.inspection.primer-film.gauge: {principle: magnetic, correction: 60 um}

    preparations.sand-steel.steps.degrease: {id: degrease, do: steam-clean, text: Steam clean with detergent., acceptance: Water stays whole.}

    preparations.sand-steel.steps.degrease: {id: degrease, do: wash, text: Pressure-wash with an alkaline detergent and rinse., acceptance: Water stays whole.}

    preparations.sand-steel.steps.degrease: {id: degrease, do: wash, text: Pressure-wash., cleanliness: water_break}

    preparations.sand-steel.steps: [{id: drill, do: drill, text: Drill the holes.}, {id: deburr, do: power-tool, text: Take the burrs off the holes.}, {id: degrease, do: degrease, text: Degrease with two clean cloths., acceptance: A white cloth stays white.}, {id: sand, do: sand, text: Sand to an even matt surface., abrasive: P180, grade: P Ma, acceptance: No gloss left.}]
Fails
    preparations.sand-steel.steps.degrease: {id: degrease, do: dust-off, text: Blow off., cleanliness: water_break}    # at preparations.sand-steel.steps.sand

    preparations.sand-steel.steps.degrease: {id: degrease, do: wash, text: Wash with water.}    # warning at preparations.sand-steel.steps.sand
    jobs.refit.substrate.material: grp
    jobs.refit.inspection.primer-film.method: ultrasonic gauge
    jobs.refit.inspection.primer-film.gauge: {principle: ultrasonic}

    Given second good
    preparations.abrade.steps.degrease: {id: degrease, do: wash, text: Wash with water., acceptance: Water does not bead.}    # note at preparations.abrade.steps.feather

    Given second good
    preparations.abrade.steps.degrease: {id: degrease, do: wash, text: Wash with water.}    # warning at preparations.abrade.steps.feather    # also PRE014 at preparations.abrade.steps

    preparations.sand-steel.steps: [{id: scrape, do: power-tool, text: Grind to bare metal., grade: SP 11, acceptance: No rust.}, {id: degrease, do: degrease, text: Degrease., acceptance: A white cloth stays white.}]    # at preparations.sand-steel.steps.scrape

    jobs.refit.items.STEP.substrate: {material: galvanized_hot_dip, thickness: 1.5 mm, zinc_state: new}
    preparations.sand-steel.steps.degrease: {id: degrease, do: wash, text: Power wash., acceptance: Water does not bead.}    # note at preparations.sand-steel.steps.sand    # note at preparations.sand-steel.steps.sand

    jobs.refit.items.STEP.substrate: {material: plastic}
    jobs.refit.items.STEP.preparation: scuff
    preparations.scuff: {id: scuff, title: Scuff, steps: [{id: wipe, do: dust-off, text: Wipe.}, {id: sand, do: sand, text: Sand., abrasive: P400}]}    # warning at preparations.scuff.steps.sand    # also SUB006 at systems.chassis.layers.barrier.product

    preparations.sand-steel.steps: [{id: sand, do: sand, text: Sand to an even matt surface., abrasive: P180, grade: P Ma}, {id: degrease, do: degrease, text: Degrease., acceptance: A white cloth stays white.}]    # at preparations.sand-steel.steps.sand
To put right
    Put a degreasing step first, with two cloths, one wet and one dry; on laminate remove the wax before sanding and again after it.
"""

import re

from specgen.facts.pairs.parts import WORKING, Part, prepared_with
from specgen.model.preparation import PreparationStep, StepKind
from specgen.rules.kit import ERROR, NOTE, WARNING, Preparation, Problem, Problems, Spec, date, rule, table

_TESTS = table("cleanliness_tests")
_OIL = _TESTS.row_citation(_TESTS.row("id", "degrease_first"))
# Tests of the table that show a surface free of oil, and words by which a wash says what takes the oil off.
_SHOWS = {"water_break", "atomiser", "oil", "litmus"}
_DISSOLVES = re.compile(r"detergent|alkali|emulsi|degreas|steam|solvent", re.IGNORECASE)
_TOOLS = {StepKind.HAND_TOOL, StepKind.POWER_TOOL}


@rule("PRE001", on=Preparation, severity=ERROR, source=_OIL)
def degreased_first(preparation: Preparation, spec: Spec, on: date) -> Problems:
    for part in prepared_with(preparation, spec):
        first = _worked_too_early(preparation, part)
        if first is None:
            continue
        path = ("steps", first.id)
        if part.kind == "metal":
            yield _on_metal(first, part)
        elif part.kind in {"plastic", "paint"} and (asked := part.asks("clean")) is not None:
            what = f"{first.id} works {part.name} before wax and grease are removed; required: {asked[0]}"
            yield Problem(path, what, severity=WARNING, source=asked[1])


def _worked_too_early(preparation: Preparation, part: Part) -> PreparationStep | None:
    """The first step that works a part not yet cleaned; None where none does, or tools only dress it before the cleaning."""
    steps = preparation.steps
    cleaned = next((at for at, step in enumerate(steps) if _cleans(step, part)), len(steps))
    early = [step for step in steps[:cleaned] if step.do in WORKING]
    worked_after = any(step.do in WORKING for step in steps[cleaned:])
    if not early or (worked_after and all(step.do in _TOOLS for step in early)):
        return None
    return early[0]


def _on_metal(first: PreparationStep, part: Part) -> Problem:
    before = part.preparation.steps[: part.preparation.steps.index(first)]
    washes = [step for step in before if step.do is StepKind.WASH]
    if not washes:
        return Problem(("steps", first.id), f"{first.id} works {part.name} before any degreasing step")
    what = f"{first.id} works {part.name} after {washes[-1].id}, of which nothing states that it takes oil off"
    seen = any(step.acceptance is not None or step.cleanliness is not None for step in washes)
    remedy = "name the detergent or the test that shows the surface free of oil"
    return Problem(("steps", first.id), what, remedy, NOTE if seen else WARNING)


def _cleans(step: PreparationStep, part: Part) -> bool:
    if step.do in {StepKind.DEGREASE, StepKind.STEAM} or step.grade == "SP 1":
        return True
    weathered = part.is_zinc and part.substrate.zinc_state in {"partly_weathered", "fully_weathered"}
    stated = step.cleanliness in _SHOWS or _DISSOLVES.search(step.text) is not None
    return step.do is StepKind.WASH and (weathered or stated)
