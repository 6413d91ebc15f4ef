"""INS006 A wet film comb accepts nothing

Checks
    A point that reads with a wet film comb and has limits of film or a counting rule.
Why
    The comb steers the painter while he sprays; what has dried is not what it showed.
Passes
    jobs.refit.inspection.primer-film.gauge: {principle: magnetic}
Fails
    jobs.refit.inspection.primer-film.gauge: {principle: wet-film-comb}    # at jobs.refit.inspection.primer-film.gauge.principle
To put right
    Accept on dry film with a gauge; keep the comb as a working aid, with its wet target at the layer.
"""

from __future__ import annotations

from collections.abc import Iterator

from specgen.findings import Severity
from specgen.model.acceptance import GaugePrinciple
from specgen.model.job import Job
from specgen.model.senses import Concern
from specgen.model.spec import Spec
from specgen.plan.inspected import film_points
from specgen.rules.declare import Problem, rule
from specgen.rules.inspection.points import principle_of
from specgen.standards.citations import cite


@rule(
    "INS006",
    on=Job,
    severity=Severity.WARNING,
    concern=Concern.ACCEPTANCE,
    source=cite("MIL-HDBK-1110", "9.6.8.3 and 9.6.8.4"),
)
def wet_film_accepts_nothing(job: Job, spec: Spec) -> Iterator[Problem]:
    for point in film_points(job):
        criterion = point.criterion
        judged = any(value is not None for value in (criterion.rule, criterion.min, criterion.nominal, criterion.max))
        if judged and principle_of(point) is GaugePrinciple.COMB:
            what = f"{point.id} accepts by a wet film comb"
            yield Problem(("inspection", point.id, "gauge", "principle"), what)
