"""AIR006 A confined space is entered on a signed permit only

Checks
    Each job in a confined space: who signs the entry permit, the atmosphere test, the standby person and the rescue are stated. A job whose scope speaks of work inside a tank, hopper, pit or the like and that states no place of work is asked for it.
Why
    In a confined space vapour and lack of oxygen kill without warning, and whoever goes in to help dies beside the first. No calculated flow makes it safe: the permit is signed at the space, on the day.
Passes
    jobs.refit.workplace: confined-space
    jobs.refit.ventilation: {statement: Forced extraction from the bottom of the tank.}
    jobs.refit.confined_space: {permit: safety office of the yard, atmosphere_test: "Oxygen, explosive limit and solvent before entry and all the time; out below 20 % oxygen.", standby: one trained person at the manhole with no other task, rescue: "Tripod, harness and winch in place; site fire crew told."}

    jobs.refit.scope: Repainting of doors; nobody works inside the tank.

    without jobs.refit.workplace
    jobs.refit.ventilation: {statement: Forced extraction on at all times.}
    jobs.refit.scope: New finish in tram silver on the hopper lid and the tank brackets, in bay 3.
Fails
    jobs.refit.workplace: confined-space    # at jobs.refit.confined_space
    jobs.refit.ventilation: {statement: Forced extraction from the bottom of the tank.}

    Given second good
    jobs.lids.confined_space: {permit: safety office, standby: one person at the manhole}    # at jobs.lids.confined_space

    without jobs.refit.workplace
    jobs.refit.ventilation: {statement: Forced extraction from the bottom of the tank.}
    jobs.refit.scope: New lining inside the water tank of the sweeper.    # at jobs.refit.workplace
To put right
    State place of work: confined-space, and under confined_space the permit, the atmosphere test, the standby person and the rescue. The documents then print it as a hold point.
"""

import re

from specgen.facts.job.confined import is_confined, lacking
from specgen.rules.kit import WARNING, Basis, Job, Problem, Problems, Spec, cite, date, rule

_SPACE = r"(?:tanks?|hopper|silo|pit|manhole|cofferdam|ballast tanks?|pressure vessel|boiler)"
_INSIDE = re.compile(
    rf"\b(?:inside|into|interior of|in)\s+(?:the|a|an|each|both|its)\s+(?:[\w-]+\s+){{0,2}}{_SPACE}\b|\binside\s+(?:[\w-]+\s+)?{_SPACE}\b"
    r"|\bconfined space\b|\btank interior\b",
    re.I,
)
_RULED_OUT = re.compile(r"\b(?:no|not|never|nobody|without|outside)\b", re.I)


@rule("AIR006", on=Job, severity=WARNING, source=cite("29-CFR-1910-146", "", Basis.MEMORY))
def confined_space_held(job: Job, spec: Spec, on: date) -> Problems:
    if is_confined(job):
        gaps = lacking(job)
        if gaps:
            what = f"{job.id} is done in a confined space; not stated: {', '.join(gaps)}"
            yield Problem(("confined_space",), what)
        return
    if job.workplace is not None:
        return
    for part in re.split(r"[.;]", job.scope):
        found = _INSIDE.search(part)
        if found and not _RULED_OUT.search(part):
            what = f"the scope of {job.id} speaks of work {found[0]}; whether that is a confined space is not stated"
            yield Problem(("workplace",), what)
            return
