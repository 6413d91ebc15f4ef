"""AIR006 A confined space is entered on a signed permit only

Checks
    Each job in a confined space: who signs the entry permit, the atmosphere test, the standby person, the rescue and the ventilation are stated. A job whose scope speaks of work inside a tank, hopper, pit or the like, or that paints indoors what is immersed in service, and that states no place of work or only that it is on site, is asked for it, unless a hold point at receipt names the permit or the test of the air.
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

    jobs.refit.workplace: on-site
    jobs.refit.ventilation: {statement: Forced extraction from the bottom of the tank.}
    jobs.refit.scope: New lining inside the water tank of the sweeper.
    jobs.refit.inspection.gas: {id: gas, check: Entry permit, at: receipt, criterion: {text: "gas and oxygen read, permit signed"}, hold_point: yes}
    jobs.refit.inspection.air: {id: air, check: Air and surface temperature and dew point, at: during-application, criterion: {text: inside the limits}}
Fails
    jobs.refit.workplace: confined-space
    jobs.refit.ventilation: {statement: None needed.}    # at jobs.refit.ventilation    # also AIR004 at jobs.refit.ventilation
    jobs.refit.confined_space: {permit: safety office of the yard, atmosphere_test: "Oxygen, explosive limit and solvent before entry and all the time; out below 20 % oxygen.", standby: one trained person at the manhole with no other task, rescue: "Tripod, harness and winch in place; site fire crew told."}

    jobs.refit.workplace: confined-space    # at jobs.refit.confined_space
    jobs.refit.ventilation: {statement: Forced extraction from the bottom of the tank.}

    Given second good
    jobs.lids.confined_space: {permit: safety office, standby: one person at the manhole}    # at jobs.lids.confined_space

    without jobs.refit.workplace
    jobs.refit.ventilation: {statement: Forced extraction from the bottom of the tank.}
    jobs.refit.scope: New lining inside the water tank of the sweeper.    # at jobs.refit.workplace

    Given second good
    jobs.rails.exposure: interior
    jobs.rails.workplace: on-site    # at jobs.rails.workplace
    jobs.rails.ventilation: {statement: Forced extraction from the bottom of the tank.}
    jobs.rails.items.RAIL.environment: {kind: immersion, category: Im1}
    systems.deck.layers.first.stripe_coat: {when: before, where: welds}
To put right
    State place of work: confined-space, and under confined_space the permit, the atmosphere test, the standby person and the rescue, and under ventilation the flow or a sentence. The documents then print it as a hold point.
"""

import re

from specgen.facts.job.air_wording import states_air
from specgen.facts.job.confined import is_confined, lacking
from specgen.facts.job.exposure import environment_of, exposure_of
from specgen.facts.job.looked_for import words_of
from specgen.model.acceptance import InspectionPoint, Stage
from specgen.model.application import Workplace
from specgen.model.environment import EnvironmentKind
from specgen.model.job import Exposure, Item
from specgen.rules.kit import WARNING, Basis, Job, Problem, Problems, Spec, cite, date, rule

_SPACE = r"(?:tanks?|hopper|silo|pit|manhole|cofferdam|ballast tanks?|pressure vessel|boiler)"
_INSIDE = re.compile(
    rf"\b(?:inside|into|interior of|in)\s+(?:the|a|an|each|both|its)\s+(?:[\w-]+\s+){{0,2}}{_SPACE}\b|\binside\s+(?:[\w-]+\s+)?{_SPACE}\b"
    r"|\bconfined space\b|\btank interior\b",
    re.I,
)
_PERMIT = re.compile(r"permit|oxygen|gas.free|free of gas|atmosphere", re.I)
_RULED_OUT = re.compile(r"\b(?:no|not|never|nobody|without|outside)\b", re.I)


@rule("AIR006", on=Job, severity=WARNING, source=cite("29-CFR-1910-146", "", Basis.MEMORY))
def confined_space_held(job: Job, spec: Spec, on: date) -> Problems:
    if is_confined(job):
        gaps, aired = lacking(job), states_air(job)
        if gaps or not aired:
            named = (*gaps, *(() if aired else ("the ventilation",)))
            what = f"{job.id} is done in a confined space; not stated: {', '.join(named)}"
            yield Problem(("confined_space" if gaps else "ventilation",), what)
        return
    if job.workplace not in {None, Workplace.ON_SITE} or any(_asks_for_permit(point) for point in job.inspection):
        return
    for part in re.split(r"[.;]", job.scope):
        found = _INSIDE.search(part)
        if found and not _RULED_OUT.search(part):
            what = f"the scope of {job.id} speaks of work {found[0]}; whether that is a confined space is not stated"
            yield Problem(("workplace",), what)
            return
    if any(_lined(job, item) for item in job.items):
        what = f"{job.id} paints indoors what is immersed in service; whether that is a confined space is not stated"
        yield Problem(("workplace",), what)


def _asks_for_permit(point: InspectionPoint) -> bool:
    return point.hold_point and point.at is Stage.RECEIPT and _PERMIT.search(words_of(point)) is not None


def _lined(job: Job, item: Item) -> bool:
    environment = environment_of(job, item)
    immersed = environment is not None and environment.kind is EnvironmentKind.IMMERSION
    return immersed and exposure_of(job, item) is Exposure.INTERIOR
