"""REP002 A feathering step names its papers

Checks
    Each step that feathers an edge names abrasive papers, and the last of them is within the range for that task.
Why
    The scratches of a last paper that is too coarse show through the new coat as a ring; with no paper named the edge is left to chance.
Passes
    preparations.sand-steel.steps.feather: {id: feather, do: feather-edge, text: Feather the edges of old paint., abrasive: "P180, then P240", acceptance: No step under a fingernail.}

    Given second good
    preparations.abrade.steps.feather.abrasive: P180

    Given second good
    preparations.abrade.steps.feather.abrasive: P240, then P320
Fails
    preparations.sand-steel.steps.feather: {id: feather, do: feather-edge, text: Feather the edges of old paint., acceptance: No step under a fingernail.}    # at preparations.sand-steel.steps.feather.abrasive

    preparations.sand-steel.steps.feather: {id: feather, do: feather-edge, text: Feather the edges of old paint., abrasive: P120, acceptance: No step under a fingernail.}    # at preparations.sand-steel.steps.feather.abrasive

    Given second good
    jobs.rails.vehicles: [F-1]
    preparations.abrade.steps.feather.abrasive: P240, then P400    # at preparations.abrade.steps.feather.abrasive

    Given second good
    jobs.rails.vehicles: [F-1]
    preparations.abrade.steps.feather.abrasive: P150    # at preparations.abrade.steps.feather.abrasive

    Given second good
    jobs.rails.vehicles: [F-1]
    preparations.abrade.steps.again: {id: again, do: feather-edge, text: Feather once more., abrasive: P400}    # at preparations.abrade.steps.again.abrasive
To put right
    Start with P180 and finish with P240 to P320.
"""

from specgen.facts.job.exposure import like_a_vehicle
from specgen.facts.pairs.papers import consequence, papers_in, sanding_task, side_of_window
from specgen.facts.pairs.parts import prepared_with
from specgen.model.preparation import StepKind
from specgen.rules.kit import WARNING, Preparation, Problem, Problems, Spec, date, rule, table

_STAGES = table("sanding_stages")


@rule(
    "REP002",
    on=Preparation,
    severity=WARNING,
    source=_STAGES.row_citation(sanding_task("feather_edge")),
)
def feather_paper(preparation: Preparation, spec: Spec, on: date) -> Problems:
    parts = list(prepared_with(preparation, spec))
    if parts and not any(like_a_vehicle(part.job, part.item, part.system) for part in parts):
        return
    row = sanding_task("feather_edge")
    window = f"P{row['coarsest_p']} to P{row['finest_p']}"
    for step in preparation.steps:
        if step.do is not StepKind.FEATHER:
            continue
        path, papers = ("steps", step.id, "abrasive"), papers_in(step.abrasive)
        if not papers:
            yield Problem(path, f"the step {step.id} feathers an edge but names no paper; usual: {window}")
        elif side := side_of_window(papers[-1], row):
            yield Problem(
                path, f"P{papers[-1]} is {side} than the usual {window} for a feathered edge: {consequence(side)}"
            )
