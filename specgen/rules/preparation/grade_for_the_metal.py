"""PRE002 Preparation grade and blasting suit the metal

Checks
    On zinc, stainless steel and non-ferrous metals: no step requires a grade that is defined on carbon steel (a warning for the tool grades St, whose scope is not verified against the published text), none fully blast-cleans what may only be sweep-blasted, and none blasts what must not be blasted. Carbon steel and cast iron are not assessed.
Why
    An Sa grade describes blast-cleaned carbon steel; blasting zinc to it removes the zinc.
Passes
    jobs.refit.substrate: {material: galvanized_hot_dip, thickness: 1.5 mm}
    jobs.refit.inspection.primer-film.gauge: {principle: magnetic, correction: 60 um}
    preparations.sand-steel.steps.sand: {id: sand, do: sweep-blast, text: Sweep lightly., grade: SP 16, medium: garnet, grain: 200..500 um, pressure: 270 kPa, zinc_loss: 10 um, profile: 19..20 um, profile_method: ISO 8503-5}

    jobs.refit.items.STEP.substrate: {material: cast_iron, thickness: 3 mm}
    jobs.refit.items.STEP.preparation: blast
    preparations.blast: {id: blast, title: Blast, steps: [{id: degrease, do: degrease, text: Degrease., acceptance: The cloth stays white.}, {id: blast, do: blast, text: Blast., grade: Sa 2 1/2, medium: garnet, profile: 15..20 um, profile_method: ISO 8503-5}], coat_within: 4 h}

    Given second good
Fails
    jobs.refit.items.STEP.substrate: {material: galvanized_hot_dip, thickness: 3 mm}
    preparations.sand-steel.steps.sand.grade: Sa 2.5    # at preparations.sand-steel.steps.sand.grade    # also PRE021 at preparations.sand-steel.steps.sand.grade

    jobs.refit.items.STEP.substrate: {material: galvanized_hot_dip, thickness: 3 mm}
    preparations.sand-steel.steps.sand.grade: SSPC-SP 7    # warning at preparations.sand-steel.steps.sand.grade    # also PRE008 at preparations.sand-steel.steps.sand.grade    # also PRE021 at preparations.sand-steel.steps.sand.grade

    jobs.refit.items.STEP.substrate: {material: galvanized_hot_dip, thickness: 3 mm}
    jobs.refit.items.STEP.preparation: blast
    preparations.blast: {id: blast, title: Blast, steps: [{id: degrease, do: degrease, text: Degrease., acceptance: The cloth stays white.}, {id: blast, do: blast, text: Blast., medium: garnet, profile: 15..20 um, profile_method: ISO 8503-5}], coat_within: 4 h}    # at preparations.blast.steps.blast.do

    jobs.refit.items.STEP.substrate: {material: aluminium, thickness: 3 mm}
    jobs.refit.items.STEP.preparation: tool
    preparations.tool: {id: tool, title: Tool, steps: [{id: degrease, do: degrease, text: Degrease., acceptance: The cloth stays white.}, {id: tool, do: power-tool, text: Abrade., grade: St 3, medium: nylon_web}], coat_within: 4 h}    # warning at preparations.tool.steps.tool.grade

    Given second good
    jobs.lids.items.FRAME.substrate: {material: stainless, thickness: 0.25 in}    # at preparations.blast.steps.blast.grade

    jobs.refit.items.STEP.substrate: {material: galvanized_hot_dip, thickness: 3 mm}
    jobs.refit.items.STEP.preparation: blast
    preparations.blast: {id: blast, title: Blast, steps: [{id: degrease, do: degrease, text: Degrease., acceptance: The cloth stays white.}, {id: sweep, do: sweep-blast, text: Sweep., grade: SP 16, medium: garnet, grain: 200..500 um, pressure: 270 kPa, profile: 19..20 um, profile_method: ISO 8503-5}, {id: blast, do: blast, text: Blast., medium: garnet, profile: 15..20 um, profile_method: ISO 8503-5}], coat_within: 4 h}    # at preparations.blast.steps.blast.do
To put right
    Specify SP 16 (sweep) or SP 17 (thorough) on such a metal, or sand it; on zinc keep to the limits of sweep-blasting.
"""

from specgen.facts.pairs.families import NOT_NAMED
from specgen.facts.pairs.parts import BLASTING, Part, grade_notes, members, prepared_with
from specgen.model.preparation import PreparationStep, StepKind
from specgen.rules.kit import ERROR, WARNING, Preparation, Problem, Problems, Spec, cite, date, rule, table

_NOTES = table("preparation_grade_notes")


@rule("PRE002", on=Preparation, severity=ERROR, source=cite("SSPC-SP-16", "scope"))
def grade_for_the_metal(preparation: Preparation, spec: Spec, on: date) -> Problems:
    for part in prepared_with(preparation, spec):
        if part.kind != "metal" or part.material in members("bare_steel") | {"cast_iron", NOT_NAMED}:
            continue
        for step in preparation.steps:
            if step.grade in grade_notes("carbon steel only"):
                yield _wrong_grade(step, part)
            elif step.do in BLASTING and (problem := _wrong_blast(step, part)) is not None:
                yield problem


def _wrong_grade(step: PreparationStep, part: Part) -> Problem:
    path, grade = ("steps", step.id, "grade"), step.grade or ""
    older = grade_notes("named for zinc by an older wording").get(grade)
    if older is not None and part.is_zinc:
        what = (
            f"{grade} on {part.name}: named for zinc by an older wording of ASTM D6386 and since replaced by SSPC-SP 16"
        )
        return Problem(path, what, "write SP 16", WARNING, _NOTES.row_citation(older))
    what = f"{grade} is a grade for carbon steel; the part is {part.name}"
    source = _NOTES.row_citation(grade_notes("carbon steel only")[grade])
    return Problem(path, what, severity=None if source.basis.confirmed else WARNING, source=source)


def _wrong_blast(step: PreparationStep, part: Part) -> Problem | None:
    asked = part.asks("blast")
    if asked is None:
        return None
    allowed, source = asked
    if allowed == "no" or (allowed == "sweep only" and step.do is StepKind.BLAST):
        said = "must not be blasted" if allowed == "no" else "may only be sweep-blasted, not fully blast-cleaned"
        return Problem(("steps", step.id, "do"), f"{part.name} {said}", source=source)
    return None
