"""PRE021 The grade is one that the step can give

Checks
    Each step with a grade that belongs to one way of working: grades of blast cleaning on a step that sands, feathers, brushes or grinds, and grades of hand and power tools on a step that blasts.
Why
    The letters of a grade say how the surface was worked, and its picture shows a surface worked that way: sanded steel cannot be compared with the picture of blasted steel, so the inspector has nothing to accept or refuse it by.
Passes
    preparations.sand-steel.steps.sand.grade: SP 11
Fails
    preparations.sand-steel.steps.sand.grade: Sa 2 1/2    # at preparations.sand-steel.steps.sand.grade

    preparations.sand-steel.steps.sand.grade: SP 6    # at preparations.sand-steel.steps.sand.grade

    preparations.sand-steel.steps.sand: {id: sand, do: blast, text: Blast., grade: P Ma, medium: garnet, profile: 13..20 um, profile_method: ISO 8503-5}    # at preparations.sand-steel.steps.sand.grade    # also PRE003 at preparations.sand-steel.steps.sand.do    # also PRE003 at preparations.sand-steel.steps.sand.do
To put right
    For steps worked by hand or power tool write St 2, St 3, P Ma, SP 2, SP 3, SP 11 or SP 15; for blasted steps an Sa grade or one of SP 5, SP 6, SP 7, SP 10, SP 14, SP 16 and SP 17. Or change what the step does.
"""

from __future__ import annotations

from collections.abc import Iterator

from specgen.findings import Severity
from specgen.model.preparation import Preparation, StepKind
from specgen.model.senses import Concern
from specgen.model.spec import Spec
from specgen.rules.declare import Problem, rule
from specgen.rules.preparation.parts import BLASTING
from specgen.standards.tables import table

_TOOLS = {StepKind.HAND_TOOL, StepKind.POWER_TOOL, StepKind.SAND, StepKind.FEATHER}
_GRADES = table("preparation_grades")
_WAYS = table("preparation_grade_ways")


@rule(
    "PRE021",
    on=Preparation,
    severity=Severity.WARNING,
    concern=Concern.PREPARATION,
    source=_GRADES.row_citation(_GRADES.row("id", "SP 6")),
)
def grade_of_the_step(preparation: Preparation, spec: Spec) -> Iterator[Problem]:
    ways = {row["grade"]: row for row in _WAYS.rows}
    for step in preparation.steps:
        if step.grade is None or step.grade not in ways:
            continue
        row = ways[step.grade]
        worked = "blast" if step.do in BLASTING else "tool" if step.do in _TOOLS else ""
        if worked and worked != row["way"]:
            asked, done = ("blast cleaning", "works by tool") if row["way"] == "blast" else ("tools", "blasts")
            what = f"{step.grade} is a grade of {asked} ({row['name']}), and the step {step.id} {done}"
            yield Problem(("steps", step.id, "grade"), what, source=_WAYS.row_citation(row))
