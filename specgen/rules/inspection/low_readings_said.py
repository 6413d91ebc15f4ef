"""INS001 ISO 19840 is named with its reading of the 20 % clause

Checks
    A criterion under ISO 19840 says whether the readings between 80 and 100 % of the nominal film must be fewer than 20 % of all, or may be at most 20 %.
Why
    Two of ten readings just below nominal pass one reading of the clause and fail the other. Fewer than 20 % is taken where nothing is said.
Passes
    jobs.refit.inspection.primer-film.criterion: {rule: ISO-19840, nominal: 60 um, max: 80 um, low_readings: fewer-than}
    jobs.refit.substrate.material: steel_blasted
Fails
    jobs.refit.inspection.primer-film.criterion: {rule: ISO-19840, nominal: 60 um, max: 80 um}    # at jobs.refit.inspection.primer-film.criterion.low_readings
    jobs.refit.substrate.material: steel_blasted
To put right
    Write low_readings: fewer-than, or at-most where the contract says so.
"""

from __future__ import annotations

from collections.abc import Iterator

from specgen.findings import Severity
from specgen.model.acceptance import AcceptanceRule
from specgen.model.job import Job
from specgen.model.senses import Concern
from specgen.model.spec import Spec
from specgen.rules.declare import Problem, rule
from specgen.standards.citations import cite
from specgen.standards.tables import table


@rule(
    "INS001",
    on=Job,
    severity=Severity.NOTE,
    concern=Concern.ACCEPTANCE,
    source=cite("ISO-19840", "acceptance criteria: share of readings below the nominal film"),
)
def low_readings_said(job: Job, spec: Spec) -> Iterator[Problem]:
    share = table("iso_19840_limits").row("what", "readings between that and the nominal film, fewer than")["value"]
    for point in job.inspection:
        criterion = point.criterion
        if criterion.rule is AcceptanceRule.ISO_19840 and criterion.low_readings is None:
            what = f"{point.id} does not say how many readings may lie below nominal; fewer than {share} % is taken"
            yield Problem(("inspection", point.id, "criterion", "low_readings"), what)
