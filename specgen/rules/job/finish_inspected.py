"""JOB013 The finished coating is looked at

Checks
    Each job plans a point that looks at the finished work (at: completion, or by its words appearance, colour, gloss, runs, porosity) or tests its adhesion.
Why
    A film of the right thickness may still be full of runs and pores, in the wrong colour, or peel off.
Passes
    jobs.refit.inspection.look: {id: look, check: Adhesion by cross-cut on a panel, after: clear, criterion: {text: class 0 or 1}}

    Given second good
    jobs.lids.inspection.look: {id: look, check: Runs and pores, after: face, criterion: {text: none at arm's length}}
Fails
    without jobs.refit.inspection.look    # at jobs.refit.inspection

    Given second good
    without jobs.rails.inspection.look    # at jobs.rails.inspection
    without jobs.rails.inspection.face
    jobs.lids.inspection.look: {id: look, check: Colour of the old coat, at: receipt, criterion: {text: by the card}}    # at jobs.lids.inspection
To put right
    Add a point at: completion with what must not be seen, or a test of adhesion on a panel coated with the parts.
"""

from specgen.facts.job.looked_for import looks_at_the_finish
from specgen.rules.kit import NOTE, PRACTICE, Job, Problem, Problems, Spec, date, rule


@rule("JOB013", on=Job, severity=NOTE, source=PRACTICE)
def finish_inspected(job: Job, spec: Spec, on: date) -> Problems:
    if not any(looks_at_the_finish(point) for point in job.inspection):
        yield Problem(
            ("inspection",), f"no inspection point of the job {job.id} looks at the finish or tests its adhesion"
        )
