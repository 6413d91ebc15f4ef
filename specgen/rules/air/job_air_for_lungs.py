"""AIR002 Ventilation of a job is not assessed by the explosive limit alone

Checks
    The ventilation statement of a job: where it names the explosive limit, it also names exposure limits or respiratory protection. That the air may be breathed without a mask names neither.
Why
    Air well below the explosive limit can still be toxic to breathe.
Passes
    jobs.refit.ventilation: {statement: Below a tenth of the explosive limit; breathing protection stays on.}

    jobs.refit.ventilation: {statement: Keep a window open.}

    jobs.refit.ventilation: {statement: "Below a tenth of the explosive limit; no work without a mask, exposure is measured."}
Fails
    jobs.refit.ventilation: {statement: Below a tenth of the explosive limit.}    # at jobs.refit.ventilation.statement

    jobs.refit.ventilation: {statement: "Air below a quarter of the explosive limit, so safe to breathe without a mask."}    # at jobs.refit.ventilation.statement

    Given second good
    jobs.lids.ventilation: {statement: Below a tenth of the explosive limit.}    # at jobs.lids.ventilation.statement
To put right
    State the fresh-air flow that the occupational exposure limits require, and the respiratory protection with it.
"""

from specgen.facts.job.air_wording import explosion_alone
from specgen.rules.kit import ERROR, LOGIC, Job, Problem, Problems, Spec, date, rule


@rule("AIR002", on=Job, severity=ERROR, source=LOGIC, waivable=False)
def job_air_for_lungs(job: Job, spec: Spec, on: date) -> Problems:
    stated = job.ventilation.statement if job.ventilation is not None else None
    if stated is not None and explosion_alone(stated):
        what = f"the ventilation of {job.id} refers only to the explosive limit and not to exposure or respiratory protection"
        yield Problem(("ventilation", "statement"), what)
