"""AIR002 Air of a job is not judged by the explosive limit alone

Checks
    What a job says of its air: where it names the explosive limit, it also names exposure or breathing protection.
Why
    Air that cannot explode can still poison.
Passes
    jobs.refit.air: {statement: Below a tenth of the explosive limit; breathing protection stays on.}

    jobs.refit.air: {statement: Keep a window open.}
Fails
    jobs.refit.air: {statement: Below a tenth of the explosive limit.}    # at jobs.refit.air.statement

    Given second good
    jobs.lids.air: {statement: Below a tenth of the explosive limit.}    # at jobs.lids.air.statement
To put right
    State what the limits of exposure ask for and the breathing protection beside it.
"""

from specgen.facts.job.air_wording import explosion_alone
from specgen.rules.kit import ERROR, Job, Problem, Problems, Spec, cite, date, rule


@rule("AIR002", on=Job, severity=ERROR, source=cite("OSHA-LFL-READING"), waivable=False)
def job_air_for_lungs(job: Job, spec: Spec, on: date) -> Problems:
    stated = job.air.statement if job.air is not None else None
    if stated is not None and explosion_alone(stated):
        what = f"the air of {job.id} is said to stay below the explosive limit, and nothing is said of breathing it"
        yield Problem(("air", "statement"), what)
