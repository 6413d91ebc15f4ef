"""AIR002 Air of a job is not judged by the explosive limit alone

Checks
    What a job says of its air: where it names the explosive limit, it also names exposure or breathing protection.
Why
    Air that cannot explode can still poison.
Passes
    jobs.refit.ventilation: {statement: Below a tenth of the explosive limit; breathing protection stays on.}

    jobs.refit.ventilation: {statement: Keep a window open.}
Fails
    jobs.refit.ventilation: {statement: Below a tenth of the explosive limit.}    # at jobs.refit.ventilation.statement

    Given second good
    jobs.lids.ventilation: {statement: Below a tenth of the explosive limit.}    # at jobs.lids.ventilation.statement
To put right
    State what the limits of exposure ask for and the breathing protection beside it.
"""

from specgen.facts.job.air_wording import explosion_alone
from specgen.rules.kit import ERROR, Job, Problem, Problems, Spec, cite, date, rule


@rule("AIR002", on=Job, severity=ERROR, source=cite("OSHA-LFL-READING"), waivable=False)
def job_air_for_lungs(job: Job, spec: Spec, on: date) -> Problems:
    stated = job.ventilation.statement if job.ventilation is not None else None
    if stated is not None and explosion_alone(stated):
        what = f"the air of {job.id} is said to stay below the explosive limit, and nothing is said of breathing it"
        yield Problem(("ventilation", "statement"), what)
