"""JOB012 The work has a hold point

Checks
    Each job without an inspection point of the prepared surface: one of its other points is a hold point. Where the prepared surface is inspected, that is the point to hold.
Why
    Without a point at which the work stops, whatever is wrong is covered by the next coat before anybody has looked.
Passes
    jobs.refit.inspection.primer-film.hold_point: yes

    Given second good
    jobs.rails.inspection.first.hold_point: yes
Fails
    without jobs.refit.inspection.prepared    # at jobs.refit.inspection    # also JOB006 at jobs.refit.inspection

    Given second good
    without jobs.lids.inspection.clean    # at jobs.lids.inspection    # also JOB006 at jobs.lids.inspection

    without jobs.refit.inspection    # at jobs.refit.inspection    # also JOB006 at jobs.refit.inspection    # also JOB006 at jobs.refit.inspection    # also JOB013 at jobs.refit.inspection
To put right
    Write hold_point: yes at the points that later coats cover, the prepared surface first of all.
"""

from specgen.model.acceptance import Stage
from specgen.rules.kit import PRACTICE, WARNING, Job, Problem, Problems, Spec, date, rule


@rule("JOB012", on=Job, severity=WARNING, source=PRACTICE)
def hold_planned(job: Job, spec: Spec, on: date) -> Problems:
    if any(point.hold_point or point.at is Stage.PREPARED for point in job.inspection):
        return
    yield Problem(("inspection",), f"the job {job.id} has no hold point at which the work stops")
