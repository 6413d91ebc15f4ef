"""PRE016 No paper is skipped in a sanding sequence

Checks
    The papers of consecutive sanding steps, in their order: from one to the next the grain size falls by no more than the table allows. A P number that does not exist cannot be assessed.
Why
    Where a paper is skipped, the scratches of the coarse one remain in the surface and sink through primer and colour weeks later.
Passes
    preparations.sand-steel.steps.sand.abrasive: P80, then P180

    preparations.sand-steel.steps.degrease: {id: degrease, do: sand, text: Sand., abrasive: P40}
    preparations.sand-steel.steps.dust: {id: dust, do: degrease, text: Degrease., acceptance: A white cloth stays white.}
    preparations.sand-steel.steps.sand: {id: sand, do: power-tool, text: Grind., grade: SP 11}
    preparations.sand-steel.steps.last: {id: last, do: sand, text: Sand., abrasive: P180}
    preparations.sand-steel.steps: [{id: wash, do: degrease, text: Degrease., acceptance: A white cloth stays white.}, {id: first, do: sand, text: Sand., abrasive: P40, grade: P Ma}, {id: again, do: degrease, text: Degrease.}, {id: sand, do: sand, text: Sand., abrasive: P180}]
Fails
    preparations.sand-steel.steps.sand.abrasive: P40, then P180    # at preparations.sand-steel.steps.sand.abrasive

    preparations.sand-steel.steps.sand.abrasive: P90, then P180    # note at preparations.sand-steel.steps.sand.abrasive

    preparations.sand-steel.steps: [{id: wash, do: degrease, text: Degrease., acceptance: A white cloth stays white.}, {id: first, do: feather-edge, text: Feather., abrasive: "P180, then P240"}, {id: blow, do: dust-off, text: Blow off.}, {id: tool, do: sand, text: Sand., grade: P Ma}, {id: sand, do: sand, text: Sand., abrasive: P800}]    # at preparations.sand-steel.steps.sand.abrasive    # also PRE017 at preparations.sand-steel.steps.sand.abrasive

    Given second good
    preparations.abrade.steps.sand.abrasive: P800    # at preparations.abrade.steps.sand.abrasive
To put right
    Add a paper between the two, as in P80, P120, P180.
"""

from specgen.facts.pairs.papers import grain, papers_in, too_wide_steps
from specgen.model.preparation import StepKind
from specgen.rules.kit import NOTE, PRACTICE, WARNING, Preparation, Problem, Problems, Spec, date, rule, table
from specgen.units.rounding import significant

_SANDING = {StepKind.SAND, StepKind.FEATHER}


@rule(
    "PRE016",
    on=Preparation,
    severity=WARNING,
    source=PRACTICE,
)
def papers_step_down(preparation: Preparation, spec: Spec, on: date) -> Problems:
    most = table("sanding_step").rows[0]["most_ratio"]
    before: list[str] = []
    for step in preparation.steps:
        if step.do not in _SANDING:
            # dusting off between two papers does not end the run, other work does
            before = before if step.do is StepKind.DUST_OFF else []
            continue
        path, named = ("steps", step.id, "abrasive"), papers_in(step.abrasive)
        unknown = [paper for paper in named if grain(paper) is None]
        if unknown:
            what = f"cannot be assessed: P{unknown[0]} is not a paper of the P series"
            yield Problem(path, what, "write the number printed on the paper", NOTE)
        for coarse, fine, ratio in too_wide_steps([*before, *named]):
            what = f"from P{coarse} to P{fine} the grain size falls by a factor of {significant(ratio, 2)}; the maximum is {most}"
            yield Problem(path, what)
        before = list(named[-1:]) or before
