"""JOB008 A hold point follows surface preparation

Checks
    Where inspection points cover the surface preparation, one of them is a hold point.
Why
    Surface preparation determines how long the coating lasts, and the first coat hides it permanently.
Passes
    jobs.refit.inspection.again: {id: again, check: Dust, at: after-preparation, criterion: {text: nothing on the tape}}

    jobs.refit.inspection.again: {id: again, check: Dust, at: after-preparation, criterion: {text: nothing on the tape}, hold_point: yes}
    jobs.refit.inspection.prepared.hold_point: no

    Given second good
    jobs.lids.inspection.clean.items: [LID]
Fails
    jobs.refit.inspection.prepared.hold_point: no    # at jobs.refit.inspection.prepared.hold_point

    Given second good
    jobs.rails.inspection.film.hold_point: yes
    jobs.rails.inspection.blasted.hold_point: no    # at jobs.rails.inspection.blasted.hold_point

    jobs.refit.inspection.prepared.hold_point: no    # at jobs.refit.inspection.prepared.hold_point
    jobs.refit.inspection.again: {id: again, check: Dust, at: after-preparation, criterion: {text: nothing on the tape}}
To put right
    Write hold_point: yes at the point that inspects the prepared surface.
"""

from specgen.model.acceptance import Stage
from specgen.rules.kit import PRACTICE, WARNING, Job, Problem, Problems, Spec, date, rule


@rule("JOB008", on=Job, severity=WARNING, source=PRACTICE)
def preparation_held(job: Job, spec: Spec, on: date) -> Problems:
    points = [point for point in job.inspection if point.at is Stage.PREPARED]
    if points and not any(point.hold_point for point in points):
        what = f"the job {job.id} has no hold point between surface preparation and first coat"
        yield Problem(("inspection", points[0].id, "hold_point"), what)
