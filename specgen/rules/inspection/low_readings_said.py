"""INS001 ISO 19840 is applied with a stated reading of its 20 % clause

Checks
    A criterion to ISO 19840 states whether the readings between 80 and 100 % of the nominal DFT must be fewer than 20 % of all readings, or may be at most 20 %.
Why
    Two of ten readings just below nominal are accepted under one reading of the clause and rejected under the other. Fewer than 20 % is assumed where nothing is stated.
Passes
    jobs.refit.inspection.primer-film.criterion: {rule: ISO-19840, nominal: 60 um, max: 80 um, low_readings: fewer-than}
    jobs.refit.substrate.material: steel_blasted

    jobs.refit.inspection.primer-film.criterion: {rule: ISO-19840, nominal: 60 um, max: 80 um, low_readings: at-most}
    jobs.refit.substrate.material: steel_blasted
Fails
    jobs.refit.inspection.primer-film.criterion: {rule: ISO-19840, nominal: 60 um, max: 80 um}    # at jobs.refit.inspection.primer-film.criterion.low_readings
    jobs.refit.substrate.material: steel_blasted

    jobs.refit.inspection.base-film: {id: base-film, check: Film of the base coat, after: base, criterion: {rule: ISO-19840, nominal: 60 um, max: 80 um}}    # at jobs.refit.inspection.base-film.criterion.low_readings
    jobs.refit.substrate.material: steel_blasted    # also INS013 at jobs.refit.inspection.base-film.criterion.max    # also INS013 at jobs.refit.inspection.base-film.criterion.nominal
To put right
    Write low_readings: fewer-than, or at-most where the contract says so.
"""

from specgen.model.acceptance import AcceptanceRule
from specgen.rules.kit import NOTE, Job, Problem, Problems, Spec, cite, date, rule, table


@rule(
    "INS001",
    on=Job,
    severity=NOTE,
    source=cite("ISO-19840", "acceptance criteria: share of readings below the nominal film"),
)
def low_readings_said(job: Job, spec: Spec, on: date) -> Problems:
    share = table("iso_19840_limits").row("what", "readings between that and the nominal film, fewer than")["value"]
    for point in job.inspection:
        criterion = point.criterion
        if criterion.rule is AcceptanceRule.ISO_19840 and criterion.low_readings is None:
            what = f"{point.id} does not state how many readings may lie below nominal; fewer than {share} % is assumed"
            yield Problem(("inspection", point.id, "criterion", "low_readings"), what)
