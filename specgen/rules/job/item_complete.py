"""JOB001 Every item has a system, preparation, substrate and area

Checks
    Each item has a system, a preparation and a substrate, its own or the job's; a count of at least one; and a stated area, or shapes to calculate it from, or both.
Why
    Without one of them it is not known how to treat the part or how much paint to order for it.
Passes
    jobs.refit.items.DOOR: {id: DOOR, name: Door skin, count: 2, area: 0.6 m2}

    jobs.refit.items.STEP.count: 1

    jobs.refit.items.STEP.shapes: [{id: tube, kind: tube, length: 1000 mm, diameter: 40 mm}]
Fails
    jobs.refit.items.DOOR: {id: DOOR, name: Door skin, count: 2}    # at jobs.refit.items.DOOR.area

    without jobs.refit.preparation    # at jobs.refit.items.DOOR.preparation    # also JOB001 at jobs.refit.items.STEP.preparation

    jobs.refit.items.STEP.count: 0    # at jobs.refit.items.STEP.count

    Given second good
    without jobs.rails.system    # at jobs.rails.items.RAIL.system    # at jobs.rails.items.LOCKER.system    # also JOB004 at jobs.rails.inspection.face.after    # also JOB004 at jobs.rails.inspection.film.after    # also JOB004 at jobs.rails.inspection.first.after

    Given second good
    without jobs.lids.substrate    # at jobs.lids.items.LID.substrate
To put right
    State what is missing on the job, or on the item where it differs.
"""

from specgen.rules.kit import ERROR, LOGIC, Concern, Job, Problem, Problems, Spec, date, rule


@rule("JOB001", on=Job, severity=ERROR, concern=Concern.DOCUMENT, source=LOGIC)
def item_complete(job: Job, spec: Spec, on: date) -> Problems:
    for item in job.items:
        path = ("items", item.id)
        if item.count == 0:
            yield Problem((*path, "count"), f"the item {item.id} has a count of zero")
        if item.area is None and not item.shapes:
            yield Problem((*path, "area"), f"the item {item.id} has neither an area nor shapes")
        for name, given in (
            ("system", spec.system_of(job, item)),
            ("preparation", spec.preparation_of(job, item)),
            ("substrate", spec.substrate_of(job, item)),
        ):
            if given is None:
                yield Problem((*path, name), f"neither the item {item.id} nor its job states a {name}")
