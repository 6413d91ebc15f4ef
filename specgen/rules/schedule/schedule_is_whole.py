"""SCH001 A schedule can be calculated

Checks
    The times of a schedule are those of coats that a system of the job has. Where a job states the start of its work: working hours that end after they begin, a start on a working day, the time of every step, painters enough for each step, every item in one load and each load with one system, the coldest and warmest air or the air hour by hour without a gap or repeat.
Why
    A plan with a guess in it is followed like one without.
Passes
    Given scheduled
    jobs.refit.schedule.painters: "2"

    Given scheduled
    without jobs.refit.schedule.starts
    without jobs.refit.schedule.times.prime
Fails
    Given scheduled
    jobs.refit.schedule.starts: 2026-11-28 07:00    # at jobs.refit.schedule.starts

    Given scheduled
    without jobs.refit.schedule.times.prime    # at jobs.refit.schedule.times

    Given scheduled
    jobs.refit.schedule.working_hours.day.ends: "06:00"    # at jobs.refit.schedule.working_hours.day

    Given scheduled
    jobs.refit.schedule.bays: "0"    # at jobs.refit.schedule.bays

    Given scheduled
    jobs.refit.schedule.times.prime.painters: "2"    # at jobs.refit.schedule.times

    Given scheduled
    jobs.refit.schedule.loads: [{id: doors, items: [DOOR]}]    # at jobs.refit.schedule.loads

    Given scheduled
    without jobs.refit.schedule.starts
    jobs.refit.schedule.times.prime.coat: first    # at jobs.refit.schedule.times.prime.coat
To put right
    State what is missing, as the shop works: hours, people, bays, and the times its steps take.
"""

from specgen.facts.job.plan import NoPlan, Plan
from specgen.facts.job.schedule import schedule
from specgen.facts.job.schedule_stated import coats_not_there
from specgen.rules.kit import ERROR, LOGIC, Job, Problem, Problems, Spec, date, rule


@rule("SCH001", on=Job, severity=ERROR, source=LOGIC)
def schedule_is_whole(job: Job, spec: Spec, on: date) -> Problems:
    if job.schedule is None:
        return
    found = coats_not_there(job, spec) if job.schedule.starts is None else schedule(job, spec)
    if isinstance(found, Plan | NoPlan):
        return
    for fault in found:
        yield Problem(fault.at[2:], fault.what, fault.put_right)
