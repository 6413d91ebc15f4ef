"""JOB004 Every inspection point has a stage or a coat

Checks
    Each inspection point belongs to a stage or follows a coat, not both; the coat it follows is in a system of the job.
Why
    An inspection without a place in the work is done at the end, when the coat it was meant for is already overcoated.
Passes
    jobs.refit.inspection.look: {id: look, check: Colour and gloss, at: completion, criterion: {text: as the card}}

    Given second good
    jobs.lids.inspection.film.after: gloss
    jobs.lids.inspection.film.gauge: {principle: destructive}
    jobs.lids.inspection.film.criterion: {rule: own, min: 1.6 mil, max: 2.5 mil, text: every reading}
Fails
    without jobs.refit.inspection.primer-film.after    # at jobs.refit.inspection.primer-film.at

    jobs.refit.inspection.primer-film.after: topcoat    # at jobs.refit.inspection.primer-film.after

    Given second good
    jobs.lids.inspection.film.at: completion    # at jobs.lids.inspection.film.at

    Given second good
    jobs.rails.inspection.film.after: ground    # at jobs.rails.inspection.film.after
To put right
    Write at: with a stage, or after: with the id of the coat.
"""

from specgen.rules.kit import ERROR, LOGIC, Job, Problem, Problems, Spec, date, rule


@rule("JOB004", on=Job, severity=ERROR, source=LOGIC)
def inspection_point_placed(job: Job, spec: Spec, on: date) -> Problems:
    layers = {layer.id for system in spec.systems_of(job) for layer in system.layers}
    for point in job.inspection:
        path = ("inspection", point.id)
        if point.at is None and point.after is None:
            yield Problem((*path, "at"), f"the inspection point {point.id} names neither a stage nor a coat")
        elif point.at is not None and point.after is not None:
            yield Problem((*path, "at"), f"the inspection point {point.id} names both a stage and a coat")
        elif point.after is not None and point.after not in layers:
            known = ", ".join(sorted(layers))
            yield Problem((*path, "after"), f"no system of the job has a coat {point.after}; its coats are: {known}")
