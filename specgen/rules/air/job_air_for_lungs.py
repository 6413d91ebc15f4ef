"""AIR002 Air of a job is not judged by the explosive limit alone

Checks
    What a job says of its air: where it names the explosive limit, it also names exposure or breathing protection.
Why
    Air that cannot explode can still poison.
Passes
    jobs.refit.air: {statement: Below a tenth of the explosive limit; breathing protection stays on.}
Fails
    jobs.refit.air: {statement: Below a tenth of the explosive limit.}    # at jobs.refit.air.statement
To put right
    State what the limits of exposure ask for and the breathing protection beside it.
"""

from __future__ import annotations

from collections.abc import Iterator

from specgen.findings import Severity
from specgen.model.job import Job
from specgen.model.senses import Concern
from specgen.model.spec import Spec
from specgen.rules.air.wording import explosion_alone
from specgen.rules.declare import Problem, rule
from specgen.standards.citations import cite


@rule(
    "AIR002", on=Job, severity=Severity.ERROR, concern=Concern.SAFETY, source=cite("OSHA-LFL-READING"), waivable=False
)
def job_air_for_lungs(job: Job, spec: Spec) -> Iterator[Problem]:
    stated = job.air.statement if job.air is not None else None
    if stated is not None and explosion_alone(stated):
        what = f"the air of {job.id} is said to stay below the explosive limit, and nothing is said of breathing it"
        yield Problem(("air", "statement"), what)
