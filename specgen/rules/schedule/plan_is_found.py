"""SCH002 A plan is found for the job

Checks
    Where a job states the start of its work and its schedule is whole: that a plan is found within 60 days. With several loads the search is a rule of thumb, so that none is found does not mean that there is none.
Why
    An interval that closes at night or on a Sunday is missed on the day; found beforehand it costs nothing.
Passes
    Given scheduled
    jobs.refit.schedule.painters: "2"
Fails
    Given scheduled
    jobs.refit.schedule.times.prime.time: 12 h    # at jobs.refit.schedule
To put right
    Start at another time, work on another day, abrade before the next coat, or see `specgen schedule` for the two steps that conflict.
"""

from specgen.facts.job.plan import NoPlan
from specgen.facts.job.schedule import schedule
from specgen.rules.kit import LOGIC, WARNING, Job, Problem, Problems, Spec, date, rule


@rule("SCH002", on=Job, severity=WARNING, source=LOGIC)
def plan_is_found(job: Job, spec: Spec, on: date) -> Problems:
    if job.schedule is None or job.schedule.starts is None:
        return
    found = schedule(job, spec)
    if isinstance(found, NoPlan):
        what = f"no plan was found for {found.load}: {found.why}"
        yield Problem(("schedule",), what, f"what would help: {'; '.join(found.resolves)}")
