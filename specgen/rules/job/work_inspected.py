"""JOB006 Surface preparation and DFT are inspected

Checks
    Each job plans an inspection point after surface preparation and, where one of its coats has DFT limits, its own or those of its product, a point that measures DFT.
Why
    A surface beneath a coat cannot be inspected again, and a DFT that is not measured is not proven.
Passes
    jobs.refit.inspection.prepared.method: By eye in raking light

    Given second good
    without jobs.rails.inspection.face
Fails
    without jobs.refit.inspection    # at jobs.refit.inspection    # also JOB006 at jobs.refit.inspection    # also JOB012 at jobs.refit.inspection    # also JOB013 at jobs.refit.inspection

    without jobs.refit.inspection.prepared    # at jobs.refit.inspection    # also JOB012 at jobs.refit.inspection

    without jobs.refit.inspection.primer-film    # at jobs.refit.inspection

    without jobs.refit.inspection.primer-film    # at jobs.refit.inspection
    jobs.refit.system: chassis
    systems.chassis.layers.barrier.film: {nominal: 80 um}

    Given second good
    without jobs.lids.inspection.clean    # at jobs.lids.inspection    # also JOB012 at jobs.lids.inspection

    Given second good
    without jobs.lids.inspection.ground
    without jobs.lids.inspection.film    # at jobs.lids.inspection

    Given a coat with no film limits at all
    without jobs.refit.inspection.primer-film    # at jobs.refit.inspection
To put right
    Add a point with at: after-preparation, and one after each coat with its DFT limits.
"""

from specgen.facts.job.inspected import film_points
from specgen.facts.layer.film import has_film_limits
from specgen.model.acceptance import Stage
from specgen.rules.kit import LOGIC, NOTE, Job, Problem, Problems, Spec, date, rule


@rule("JOB006", on=Job, severity=NOTE, source=LOGIC)
def work_inspected(job: Job, spec: Spec, on: date) -> Problems:
    path = ("inspection",)
    if not any(point.at is Stage.PREPARED for point in job.inspection):
        yield Problem(
            path, f"no inspection point of the job {job.id} covers the surface preparation before it is coated"
        )
    systems = spec.systems_of(job)
    limited = any(has_film_limits(system, layer, spec) for system in systems for layer in system.layers)
    if limited and not any(film_points(job)):
        yield Problem(path, f"no inspection point of the job {job.id} measures DFT, but its coats have DFT limits")
