"""INS002 The maximum DFT does not exceed three times the nominal DFT

Checks
    The maximum DFT of each criterion against three times its nominal DFT. A maximum that the product of that coat allows by itself is not assessed.
Why
    So thick a film retains solvent, cracks and loses adhesion, even though every reading is accepted.
Passes
    jobs.refit.inspection.primer-film.criterion: {rule: own, nominal: 60 um, max: 180 um, text: no reading outside the limits}
    systems.cab.layers.primer.film.max: 180 um
    without products.primer.film.max

    products.primer.film.max: 200 um
    jobs.refit.inspection.primer-film.criterion: {rule: own, nominal: 60 um, max: 200 um, text: no reading outside the limits}
    systems.cab.layers.primer.film.max: 200 um
Fails
    jobs.refit.inspection.primer-film.criterion: {rule: own, nominal: 60 um, max: 200 um, text: no reading outside the limits}    # at jobs.refit.inspection.primer-film.criterion.max    # also INS013 at jobs.refit.inspection.primer-film.criterion.max

    products.primer.film.max: 200 um
    jobs.refit.inspection.primer-film.criterion: {rule: own, nominal: 60 um, max: 201 um, text: no reading outside the limits}    # at jobs.refit.inspection.primer-film.criterion.max    # also INS013 at jobs.refit.inspection.primer-film.criterion.max

    jobs.refit.inspection.primer-film.criterion: {rule: own, nominal: 60 um, max: 181 um, text: no reading outside the limits}    # at jobs.refit.inspection.primer-film.criterion.max    # also INS013 at jobs.refit.inspection.primer-film.criterion.max

    Given second good
    jobs.lids.inspection.film.criterion: {rule: own, nominal: 1 mil, max: 3.1 mil, text: every reading}    # at jobs.lids.inspection.film.criterion.max    # also INS013 at jobs.lids.inspection.film.criterion.max

    Given second good
    jobs.lids.inspection.both: {id: both, check: Film of all, at: completion, method: magnetic gauge, criterion: {rule: own, nominal: 1 mil, max: 3.5 mil, text: every reading}}    # at jobs.lids.inspection.both.criterion.max    # also INS012 at jobs.lids.inspection.both.at
To put right
    Lower the maximum, or have the product state that this DFT is allowed.
"""

from fractions import Fraction

from specgen.model.acceptance import InspectionPoint
from specgen.rules.kit import WARNING, Job, Problem, Problems, Quantity, Spec, date, rule, table


@rule("INS002", on=Job, severity=WARNING, source=table("iso_19840_limits").citation)
def maximum_in_proportion(job: Job, spec: Spec, on: date) -> Problems:
    most = Fraction(
        table("iso_19840_limits").row("what", "maximum as a multiple of the nominal film, at most")["value"]
    )
    for point in job.inspection:
        nominal, limit = point.criterion.nominal, point.criterion.max
        if nominal is None or limit is None or limit.base <= nominal.base * most or _allowed(point, job, spec, limit):
            continue
        what = f"maximum DFT {limit} is more than {most} times the nominal DFT, {nominal}"
        yield Problem(("inspection", point.id, "criterion", "max"), what)


def _allowed(point: InspectionPoint, job: Job, spec: Spec, limit: Quantity) -> bool:
    films = [
        spec.product_of(layer).film.max
        for system in spec.systems_of(job)
        for layer in system.layers
        if layer.id == point.after
    ]
    return bool(films) and all(film is not None and limit <= film for film in films)
