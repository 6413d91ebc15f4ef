"""PRE021 The preparation grade matches the method of the step

Checks
    Each step with a grade that belongs to one method: blast-cleaning grades on a step that sands, feathers, brushes or grinds, hand- and power-tool grades on a step that blasts, and grades of either on a step that jets with water or the other way round.
Why
    The letters of a grade state how the surface was worked, and its photograph shows a surface worked that way: sanded steel cannot be compared with the photograph of blast-cleaned steel, so the inspector has nothing to accept or reject it by.
Passes
    Given second good
    preparations.blast.steps.wash: {id: wash, do: water-jet, text: Jet., grade: WJ-4, acceptance: No salt and no grease.}

    preparations.sand-steel.steps.sand.grade: SP 11

    preparations.sand-steel.steps.degrease: {id: degrease, do: degrease, text: Degrease., grade: SP 1, acceptance: The cloth stays white.}
Fails
    preparations.sand-steel.steps.sand.grade: Sa 2 1/2    # at preparations.sand-steel.steps.sand.grade

    preparations.sand-steel.steps.sand.grade: SP 6    # at preparations.sand-steel.steps.sand.grade

    preparations.sand-steel.steps.sand: {id: sand, do: blast, text: Blast., grade: P Ma, medium: garnet, profile: 13..20 um, profile_method: ISO 8503-5}    # at preparations.sand-steel.steps.sand.grade
    jobs.refit.substrate.thickness: 3 mm

    preparations.sand-steel.steps.dust: {id: dust, do: hand-tool, text: Brush., grade: SP 7}    # at preparations.sand-steel.steps.dust.grade

    Given second good
    preparations.abrade.steps.feather.grade: P Sa 2    # at preparations.abrade.steps.feather.grade

    Given second good
    preparations.blast.steps.blast.grade: SP 15    # at preparations.blast.steps.blast.grade

    Given second good
    preparations.blast.steps.jet: {id: jet, do: water-jet, text: Jet., grade: Sa 2}    # at preparations.blast.steps.jet.grade
To put right
    For steps worked by hand or power tool write St 2, St 3, P Ma, SP 2, SP 3, SP 11 or SP 15; for blasting steps an Sa grade or an SP grade of blast-cleaning. Or change the method of the step.
"""

from specgen.facts.pairs.parts import BLASTING
from specgen.model.preparation import StepKind
from specgen.rules.kit import (
    WARNING,
    Basis,
    Preparation,
    Problem,
    Problems,
    Row,
    Spec,
    cell_citation,
    cite,
    date,
    rule,
    table,
)

_WORKED = {
    "blast": BLASTING,
    "tool": {StepKind.HAND_TOOL, StepKind.POWER_TOOL, StepKind.SAND, StepKind.FEATHER},
    "jet": {StepKind.JET},
}
_ASKED = {"blast": "blast-cleaning", "tool": "hand- or power-tool", "jet": "water-jetting"}
_DONE = {"blast": "blasts", "tool": "works by hand or power tool", "jet": "jets with water"}
_GRADES = table("preparation_grades")


@rule(
    "PRE021",
    on=Preparation,
    severity=WARNING,
    source=cite("ISO-8501-1", basis=Basis.MEMORY),
)
def grade_of_the_step(preparation: Preparation, spec: Spec, on: date) -> Problems:
    for step in preparation.steps:
        if step.grade is None:
            continue
        row = _GRADES.row("id", step.grade)
        way = _way(row)
        worked = next((way for way, kinds in _WORKED.items() if step.do in kinds), "")
        if way and worked and worked != way:
            what = f"{step.grade} is a {_ASKED[way]} grade ({row['name']}), but the step {step.id} {_DONE[worked]}"
            source = cell_citation("preparation_grades", step.grade, "series")
            yield Problem(("steps", step.id, "grade"), what, source=source)


def _way(row: Row) -> str:
    """blast or tool, as series and name of the grade say; empty for flame, pickling and solvent."""
    said = f"{row['series']} {row['name']}"
    if "blast" in said:
        return "blast"
    if "jetting" in said:
        return "jet"
    return "tool" if "tool" in said or "machine" in said else ""
