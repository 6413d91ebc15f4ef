"""INS003 ISO 19840 is used where it was written for

Checks
    A criterion under ISO 19840: its nominal film, and whether the items it reads are blasted.
Why
    The rule was written for rough surfaces and thicker films; on sanded sheet and thin coats its counting means little.
Passes
    jobs.refit.inspection.primer-film.criterion: {rule: ISO-19840, nominal: 60 um, max: 80 um, low_readings: fewer-than}
    jobs.refit.substrate.material: steel_blasted
Fails
    jobs.refit.inspection.primer-film.criterion: {rule: ISO-19840, nominal: 60 um, max: 80 um, low_readings: fewer-than}    # at jobs.refit.inspection.primer-film.criterion.rule

    jobs.refit.inspection.primer-film.criterion: {rule: ISO-19840, nominal: 30 um, max: 80 um, low_readings: fewer-than}    # at jobs.refit.inspection.primer-film.criterion.nominal
    jobs.refit.substrate.material: steel_blasted

    jobs.refit.inspection.primer-film.criterion: {rule: ISO-19840, max: 80 um, low_readings: fewer-than}    # at jobs.refit.inspection.primer-film.criterion.nominal
    jobs.refit.substrate.material: steel_blasted
To put right
    Write an own rule, such as no reading below so many percent and at most so many below nominal; or name SSPC-PA 2 with its level.
"""

from __future__ import annotations

from collections.abc import Iterator

from specgen.findings import Severity
from specgen.model.acceptance import AcceptanceRule
from specgen.model.job import Job
from specgen.model.senses import Concern
from specgen.model.spec import Spec
from specgen.plan.inspected import places
from specgen.rules.declare import Problem, rule
from specgen.rules.inspection.points import is_rough
from specgen.standards.tables import table
from specgen.trade.given import from_table


@rule(
    "INS003", on=Job, severity=Severity.WARNING, concern=Concern.ACCEPTANCE, source=table("iso_19840_limits").citation
)
def iso_19840_in_its_field(job: Job, spec: Spec) -> Iterator[Problem]:
    limits = "iso_19840_limits"
    least = from_table(limits, table(limits).row("what", "nominal film, from"), "value", "thickness", "um").quantity
    for point in job.inspection:
        criterion = point.criterion
        if criterion.rule is not AcceptanceRule.ISO_19840:
            continue
        path = ("inspection", point.id, "criterion")
        if criterion.nominal is None:
            what = f"{point.id} states no nominal film, which ISO 19840 counts from"
            yield Problem((*path, "nominal"), what, "write the nominal film", severity=Severity.NOTE)
        elif criterion.nominal.base < least.base:
            yield Problem((*path, "nominal"), f"ISO 19840 begins at {least}, here nominal is {criterion.nominal}")
        smooth = sorted({item.id for item, _ in places(point, job, spec) if not is_rough(job, item, spec)})
        if smooth:
            yield Problem((*path, "rule"), f"ISO 19840 is for rough surfaces; not blasted: {', '.join(smooth)}")
