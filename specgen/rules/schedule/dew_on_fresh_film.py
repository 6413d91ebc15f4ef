"""SCH003 No dew falls on a fresh film

Checks
    Where a schedule states its air hour by hour: from the beginning of each coat until it is dust-free the surface stays above the dew point by the margin the job states, or by the general minimum where it states none. Hours without a humidity are not assessed.
Why
    Water on a film that is still wet whitens it, takes its gloss and its adhesion; a bay that cools in the evening reaches the dew point while the coat of the afternoon dries.
Passes
    Given hourly
    jobs.refit.schedule.air.h1.humidity: 80 %

    Given hourly
    jobs.refit.schedule.air.h40.surface: 9 degC
Fails
    Given hourly
    jobs.refit.schedule.air.h1.humidity: 90 %    # at jobs.refit.schedule.air.h1

    Given hourly
    without jobs.refit.climate.dew_point_margin
    without products.primer.climate.dew_point_margin
    jobs.refit.schedule.air.h1.humidity: 90 %    # warning at jobs.refit.schedule.air.h1    # also CLI004 at jobs.refit.climate.dew_point_margin

    Given hourly
    without products.primer.drying.dust
    jobs.refit.schedule.air.h1.humidity: 90 %    # note at jobs.refit.schedule.air
To put right
    Start earlier, keep bay and parts warm until the film is dust-free (no direct-fired or unflued heater: it adds water to the air), or dry the air where no product needs its water.
"""

from specgen.facts.job.dew_on_film import Untold, dew_on_film
from specgen.facts.job.dew_point import least_margin
from specgen.facts.job.plan import Plan
from specgen.facts.job.schedule import schedule
from specgen.rules.kit import ERROR, LOGIC, NOTE, WARNING, Concern, Job, Problem, Problems, Spec, date, rule
from specgen.units.moments import show_moment


@rule("SCH003", on=Job, severity=ERROR, source=LOGIC, concern=Concern.CLIMATE)
def dew_on_fresh_film(job: Job, spec: Spec, on: date) -> Problems:
    if job.schedule is None or job.schedule.starts is None or not job.schedule.air:
        return
    plan = schedule(job, spec)
    if not isinstance(plan, Plan):
        return
    own = job.climate.dew_point_margin.low if job.climate is not None and job.climate.dew_point_margin else None
    kept = own or least_margin(None)[0]
    for found in dew_on_film(job, spec, plan, kept):
        coat = f"{found.layer.id} of {found.step.load}"
        if isinstance(found, Untold):
            what = f"cannot be assessed: whether dew falls on {coat} while it is wet; {found.why}"
            yield Problem(("schedule", "air"), what, severity=NOTE)
            continue
        what = (
            f"from {show_moment(found.entry.begins)} the surface is {found.above.quantity} above the dew point "
            f"and {coat} is not dust-free before {show_moment(found.wet_until)}; it has to stay at least {kept} above it"
        )
        yield Problem(("schedule", "air", found.entry.id), what, severity=None if own is not None else WARNING)
