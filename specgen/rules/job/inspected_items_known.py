"""JOB005 An inspection point refers to items of its job

Checks
    Each id under items of an inspection point is an item of the job, and one that receives the coat the point follows.
Why
    A point that inspects nothing is signed off all the same.
Passes
    jobs.refit.inspection.primer-film.items: [DOOR]

    Given second good
    jobs.rails.inspection.film.items: [RAIL, LOCKER]
Fails
    jobs.refit.inspection.primer-film.items: [DOOR, DOORS]    # at jobs.refit.inspection.primer-film.items

    jobs.refit.inspection.primer-film.items: [DOOR, STEP]    # at jobs.refit.inspection.primer-film.items

    Given second good
    jobs.rails.inspection.film.items: [RAIL, LID]    # at jobs.rails.inspection.film.items

    Given second good
    jobs.lids.inspection.ground.items: [LID, FRAME]    # at jobs.lids.inspection.ground.items
To put right
    Name items of the job, or leave items out to inspect all of them.
"""

from specgen.facts.job.inspected import places
from specgen.model.field_types import IDS_SHOWN, nearest_of
from specgen.rules.kit import ERROR, LOGIC, Job, Problem, Problems, Spec, date, rule


@rule("JOB005", on=Job, severity=ERROR, source=LOGIC)
def inspected_items_known(job: Job, spec: Spec, on: date) -> Problems:
    known = [item.id for item in job.items]
    layers = {layer.id for system in spec.systems_of(job) for layer in system.layers}
    for point in job.inspection:
        path = ("inspection", point.id, "items")
        reached = {item.id for item, _ in places(point, job, spec)}
        for named in point.items:
            if named not in known:
                yield Problem(path, f"{named} is not an item of the job {job.id}", nearest_of(named, known, IDS_SHOWN))
            # a layer that no system has is told by another rule
            elif named not in reached and point.after in layers:
                yield Problem(path, f"the system of {named} has no coat {point.after}, which {point.id} follows")
