"""USU009 The profile filled with paint is the profile that is blasted

Checks
    The height of the blast profile that the quantities of a job are calculated with, against the profile that its blasting steps specify.
Why
    The first coat fills the profile before it builds any DFT over the peaks; calculated for another profile, the primer runs short or is left over.
Passes
    Given second good
    jobs.rails.consumption: {loss_share: 35 %, profile: 1.5 mil, dead_volume: by-band}
Fails
    Given second good
    jobs.rails.consumption: {loss_share: 35 %, profile: 1.6 mil, dead_volume: by-band}    # at jobs.rails.consumption.profile

    Given second good
    jobs.rails.consumption: {loss_share: 35 %, profile: 0.9 mil, dead_volume: by-band}    # at jobs.rails.consumption.profile
To put right
    Take the profile of the preparation, at its upper end if the order is to suffice.
"""

from specgen.rules.kit import LOGIC, WARNING, Job, Problem, Problems, Spec, date, rule


@rule("USU009", on=Job, severity=WARNING, source=LOGIC)
def profile_filled(job: Job, spec: Spec, on: date) -> Problems:
    filled = job.consumption.profile if job.consumption is not None else None
    if filled is None:
        return
    used = {prep.id: prep for item in job.items if (prep := spec.preparation_of(job, item)) is not None}
    asked = [step.profile for prep in used.values() for step in prep.steps if step.profile is not None]
    if asked and not any(profile.holds(filled) for profile in asked):
        told = ", ".join(dict.fromkeys(str(profile) for profile in asked))
        yield Problem(("consumption", "profile"), f"profile {filled} to be filled; blasting specifies {told}")
