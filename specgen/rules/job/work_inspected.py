"""JOB006 Preparation and film are inspected

Checks
    Each job plans a point after preparation and, where a layer of it has a limit of film, its own or that of its product, a point that reads film.
Why
    What is below a coat cannot be looked at again, and a film nobody reads is a film nobody has proven.
Passes
    jobs.refit.inspection.prepared.method: By eye in raking light

    Given second good
    without jobs.rails.inspection.face
Fails
    without jobs.refit.inspection    # at jobs.refit.inspection    # also JOB006 at jobs.refit.inspection

    without jobs.refit.inspection.prepared    # at jobs.refit.inspection

    without jobs.refit.inspection.primer-film    # at jobs.refit.inspection

    without jobs.refit.inspection.primer-film    # at jobs.refit.inspection
    jobs.refit.system: chassis
    systems.chassis.layers.barrier.film: {nominal: 80 um}

    Given second good
    without jobs.lids.inspection.clean    # at jobs.lids.inspection

    Given second good
    without jobs.lids.inspection.ground
    without jobs.lids.inspection.film    # at jobs.lids.inspection

    Given a coat with no film limits at all
    without jobs.refit.inspection.primer-film    # at jobs.refit.inspection
To put right
    Add a point with at: after-preparation, and one after each coat with the limits of its film.
"""

from specgen.facts.job.inspected import film_points
from specgen.facts.layer.film import has_film_limits
from specgen.model.acceptance import Stage
from specgen.rules.kit import LOGIC, NOTE, Job, Problem, Problems, Spec, date, rule


@rule("JOB006", on=Job, severity=NOTE, source=LOGIC)
def work_inspected(job: Job, spec: Spec, on: date) -> Problems:
    path = ("inspection",)
    if not any(point.at is Stage.PREPARED for point in job.inspection):
        yield Problem(path, f"no point of the job {job.id} looks at the preparation before it is covered")
    systems = spec.systems_of(job)
    limited = any(has_film_limits(system, layer, spec) for system in systems for layer in system.layers)
    if limited and not any(film_points(job)):
        yield Problem(path, f"no point of the job {job.id} reads film, though its coats have limits")
