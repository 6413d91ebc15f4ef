"""JOB003 A DFT criterion names its acceptance rule

Checks
    Each inspection point whose criterion states a minimum, nominal or maximum DFT also names the acceptance rule for the readings, and its edition and level where that rule is SSPC-PA 2.
Why
    The same readings satisfy one acceptance rule and fail another, and the editions of one rule differ; without the name it cannot be decided whether a low reading fails.
Passes
    jobs.refit.inspection.primer-film.criterion: {rule: SSPC-PA-2, edition: "2012", level: 3, min: 40 um, max: 80 um}

    jobs.refit.inspection.primer-film.criterion: {rule: 90-10, nominal: 60 um}
Fails
    jobs.refit.inspection.primer-film.criterion: {min: 40 um, max: 80 um}    # at jobs.refit.inspection.primer-film.criterion.rule

    jobs.refit.inspection.primer-film.criterion: {rule: SSPC-PA-2, level: 3, min: 40 um, max: 80 um}    # at jobs.refit.inspection.primer-film.criterion.edition

    jobs.refit.inspection.primer-film.criterion: {rule: own, min: 40 um, max: 80 um}    # at jobs.refit.inspection.primer-film.criterion.text

    jobs.refit.inspection.primer-film.criterion: {nominal: 60 um, text: all}    # at jobs.refit.inspection.primer-film.criterion.rule

    jobs.refit.inspection.primer-film.criterion: {max: 60 um, text: all}    # at jobs.refit.inspection.primer-film.criterion.rule

    jobs.refit.inspection.prepared.criterion: {}    # at jobs.refit.inspection.prepared.criterion.text

    Given second good
    jobs.lids.inspection.film.criterion: {rule: SSPC-PA-2, edition: "2012", min: 2.3 mil, max: 3.8 mil}    # at jobs.lids.inspection.film.criterion.level
To put right
    Name the rule with its edition and level, or write rule: own and give the wording of the rule.
"""

from specgen.model.acceptance import AcceptanceRule
from specgen.rules.kit import ERROR, LOGIC, Job, Problem, Problems, Spec, date, rule


@rule("JOB003", on=Job, severity=ERROR, source=LOGIC)
def film_criterion_named(job: Job, spec: Spec, on: date) -> Problems:
    for point in job.inspection:
        criterion = point.criterion
        path = ("inspection", point.id, "criterion")
        film = any(value is not None for value in (criterion.min, criterion.nominal, criterion.max))
        if film and criterion.rule is None:
            yield Problem((*path, "rule"), f"the DFT criterion of {point.id} names no acceptance rule")
        if criterion.rule is AcceptanceRule.PA_2:
            for need in ("edition", "level"):
                if getattr(criterion, need) is None:
                    yield Problem((*path, need), f"the criterion of {point.id} names SSPC-PA 2 without its {need}")
        if criterion.rule is AcceptanceRule.OWN and criterion.text is None:
            yield Problem((*path, "text"), f"{point.id} names rule: own but gives no wording for it")
        if criterion.rule is None and criterion.text is None and not film:
            yield Problem((*path, "text"), f"the inspection point {point.id} has no acceptance criterion")
