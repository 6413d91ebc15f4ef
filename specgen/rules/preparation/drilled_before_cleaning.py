"""PRE022 Drilling and cutting come before the last cleaning

Checks
    The order of work: after each step that drills or cuts, a later step cleans the part: washing, steam cleaning, degreasing, blasting or dusting off.
Why
    Cutting oil, chips and burrs left by the drill are painted over; the coat crawls around them, and rust starts at the hole.
Passes
    preparations.sand-steel.steps: [{id: drill, do: drill, text: Drill the holes for the bracket.}, {id: degrease, do: degrease, text: Degrease with two cloths., acceptance: A white cloth stays white.}, {id: sand, do: sand, text: Sand to an even matt surface., abrasive: P180, grade: P Ma}]

    Given second good
    preparations.sand.steps: [{id: cut, do: cut, text: Cut out the corner.}, {id: steam, do: steam-clean, text: Steam clean., acceptance: Water stays whole.}, {id: sand, do: sand, text: Sand matt., abrasive: P150, grade: P Ma}, {id: seal, do: seal, text: Seal the joint.}]
Fails
    preparations.sand-steel.steps: [{id: degrease, do: degrease, text: Degrease with two cloths., acceptance: A white cloth stays white.}, {id: sand, do: sand, text: Sand to an even matt surface., abrasive: P180, grade: P Ma}, {id: drill, do: drill, text: Drill the holes for the bracket.}]    # at preparations.sand-steel.steps.drill

    Given second good
    preparations.sand.steps: [{id: cut, do: cut, text: Cut out the corner.}, {id: degrease, do: degrease, text: Degrease., acceptance: A white cloth stays white.}, {id: sand, do: sand, text: Sand matt., abrasive: P150, grade: P Ma}, {id: trim, do: cut, text: Trim the edge.}]    # at preparations.sand.steps.trim
To put right
    Drill and cut first, or degrease and dust off again after it.
"""

from specgen.model.preparation import StepKind
from specgen.rules.kit import PRACTICE, WARNING, Preparation, Problem, Problems, Spec, date, rule

_MAKES_CHIPS = {StepKind.DRILL, StepKind.CUT}
_CLEANS = {
    StepKind.WASH,
    StepKind.STEAM,
    StepKind.DEGREASE,
    StepKind.BLAST,
    StepKind.SWEEP,
    StepKind.JET,
    StepKind.DUST_OFF,
}


@rule("PRE022", on=Preparation, severity=WARNING, source=PRACTICE)
def drilled_before_cleaning(preparation: Preparation, spec: Spec, on: date) -> Problems:
    for at, step in enumerate(preparation.steps):
        if step.do in _MAKES_CHIPS and not any(later.do in _CLEANS for later in preparation.steps[at + 1 :]):
            yield Problem(("steps", step.id), f"no step cleans the part after {step.id} ({step.do})")
