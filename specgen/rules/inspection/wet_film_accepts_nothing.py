"""INS006 A comb gauge is not used for acceptance

Checks
    A point that measures with a comb gauge (WFT) and has DFT limits or an acceptance rule.
Why
    The comb gauge guides the painter during spraying; the dry film differs from what it showed.
Passes
    jobs.refit.inspection.primer-film.gauge: {principle: magnetic}

    jobs.refit.inspection.base-wet: {id: base-wet, check: Wet film of the base coat, after: base, gauge: {principle: wet-film-comb}, criterion: {text: even}}
Fails
    jobs.refit.inspection.primer-film.gauge: {principle: wet-film-comb}    # at jobs.refit.inspection.primer-film.gauge.principle

    Given second good
    jobs.rails.inspection.face.criterion: {min: 1 mil, text: even}    # at jobs.rails.inspection.face.gauge.principle

    Given second good
    jobs.rails.inspection.face.criterion: {nominal: 2 mil, text: even}    # at jobs.rails.inspection.face.gauge.principle    # also JOB003 at jobs.rails.inspection.face.criterion.rule

    Given second good
    jobs.rails.inspection.face.criterion: {max: 3 mil, text: even}    # at jobs.rails.inspection.face.gauge.principle    # also JOB003 at jobs.rails.inspection.face.criterion.rule

    Given second good
    jobs.rails.inspection.face.criterion: {rule: own, text: even}    # at jobs.rails.inspection.face.gauge.principle
To put right
    Accept by DFT readings with a gauge; keep the comb gauge as a working aid, with its target WFT at the coat.
"""

from specgen.facts.job.inspected import film_points
from specgen.facts.job.points import principle_of
from specgen.model.acceptance import GaugePrinciple
from specgen.rules.kit import WARNING, Job, Problem, Problems, Spec, cite, date, rule


@rule(
    "INS006",
    on=Job,
    severity=WARNING,
    source=cite("MIL-HDBK-1110", "9.6.8.3 and 9.6.8.4"),
)
def wet_film_accepts_nothing(job: Job, spec: Spec, on: date) -> Problems:
    for point in film_points(job):
        criterion = point.criterion
        judged = any(value is not None for value in (criterion.rule, criterion.min, criterion.nominal, criterion.max))
        if judged and principle_of(point) is GaugePrinciple.COMB:
            what = f"{point.id} uses a comb gauge (WFT) for acceptance"
            yield Problem(("inspection", point.id, "gauge", "principle"), what)
