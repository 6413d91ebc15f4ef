"""USU011 Readings and spots of a point agree

Checks
    The gauge readings planned at a point against its spots: at least one a spot, and no more than five on average. The spots against its measurement areas: at least one an area.
Why
    A spot is the mean of a few readings close together. With fewer readings than spots, or a dozen to a spot, one of the two numbers is not what the inspector will take.
Passes
    jobs.refit.inspection.primer-film.readings: {spots: 10, readings: 10}

    jobs.refit.inspection.primer-film.readings: {spots: 10, readings: 50}

    jobs.refit.inspection.primer-film.readings: {readings: 80}
Fails
    jobs.refit.inspection.primer-film.readings: {spots: 10, readings: 9}    # at jobs.refit.inspection.primer-film.readings.readings

    jobs.refit.inspection.primer-film.readings: {spots: 10, readings: 51}    # at jobs.refit.inspection.primer-film.readings.readings

    jobs.refit.inspection.primer-film.readings: {areas: 3, spots: 2}    # at jobs.refit.inspection.primer-film.readings.spots
To put right
    Write how many spots are measured and how many readings are taken at all of them together; three to a spot is usual.
"""

from specgen.facts.usual import proportion
from specgen.rules.kit import LOGIC, PRACTICE, WARNING, Job, Problem, Problems, Spec, date, rule


@rule("USU011", on=Job, severity=WARNING, source=LOGIC)
def readings_of_a_spot(job: Job, spec: Spec, on: date) -> Problems:
    for point in job.inspection:
        plan = point.readings
        if plan is None or plan.spots is None:
            continue
        path = ("inspection", point.id, "readings")
        if plan.areas is not None and plan.spots < plan.areas:
            yield Problem((*path, "spots"), f"{plan.spots} spots in {plan.areas} measurement areas")
        if plan.readings is None:
            continue
        if plan.readings < plan.spots:
            yield Problem((*path, "readings"), f"{plan.readings} readings at {plan.spots} spots")
        elif plan.readings > (most := proportion("readings")) * plan.spots:
            what = f"{plan.readings} readings at {plan.spots} spots; at most {most} a spot is usual"
            yield Problem((*path, "readings"), what, source=PRACTICE)
