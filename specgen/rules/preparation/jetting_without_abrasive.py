"""PRE029 Water-jetting is done with water alone

Checks
    Each step of water-jetting that states an abrasive, its grain or a blast medium.
Why
    Grades of water-jetting are for water alone, which lays no profile. With abrasive in the water it is blasting: another grade, a new profile, and a profile to be measured.
Passes
    preparations.sand-steel.steps.jet: {id: jet, do: water-jet, text: Jet off all loose matter.}

    preparations.sand-steel.steps.sand.abrasive: P180
Fails
    preparations.sand-steel.steps.jet: {id: jet, do: water-jet, text: Jet it clean., abrasive: garnet}    # at preparations.sand-steel.steps.jet.abrasive

    preparations.sand-steel.steps.jet: {id: jet, do: water-jet, text: Jet it clean., medium: hard_media}    # at preparations.sand-steel.steps.jet.medium
To put right
    Take the abrasive out, or write do: blast and say in the text that the blasting is wet.
"""

from specgen.model.preparation import StepKind
from specgen.rules.kit import LOGIC, WARNING, Preparation, Problem, Problems, Spec, date, rule, table


@rule("PRE029", on=Preparation, severity=WARNING, source=LOGIC)
def jetting_without_abrasive(preparation: Preparation, spec: Spec, on: date) -> Problems:
    for step in preparation.steps:
        if step.do is not StepKind.JET:
            continue
        blast = step.medium is not None and table("preparation_media").row("id", step.medium)["kind"] == "blast medium"
        named = (
            ("abrasive", step.abrasive is not None),
            ("medium", blast),
            ("grain", step.grain is not None),
        )
        for leaf, stated in named:
            if stated:
                yield Problem(("steps", step.id, leaf), f"{step.id} is water-jetting, but names an abrasive")
                break
