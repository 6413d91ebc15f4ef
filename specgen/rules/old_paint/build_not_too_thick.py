"""OLD010 Existing and new coats together are not too thick

Checks
    The DFT of the existing coats that remain plus the nominal DFT of the new ones (where none is stated, the middle of their limits or the nominal DFT of the product), against the strip limit of the item, or else the general limits of a vehicle finish; on parts that are no vehicle those are only noted, for steelwork carries thicker systems.
Why
    Every coat continues to shrink slightly for years; a thick build-up cracks through to the metal and chips off through all its coats.
Passes
    jobs.refit.items.DOOR.old_coats: [{id: factory, family: oem_finish, thickness: 110 um}]

    jobs.refit.items.DOOR.old_coats: [{id: factory, family: oem_finish, thickness: 200 um}]
    jobs.refit.items.DOOR.strip_limit: 350 um

    jobs.refit.items.DOOR.old_coats: [{id: factory, family: oem_finish, thickness: 120 um}]

    jobs.refit.items.DOOR.old_coats: [{id: under, family: epoxy_2k, thickness: 100 um}, {id: factory, family: oem_finish, thickness: 120 um}]
    jobs.refit.items.DOOR.strip_limit: 350 um
Fails
    jobs.refit.items.DOOR.old_coats: [{id: factory, family: oem_finish, thickness: 130 um}]    # warning at jobs.refit.items.DOOR.old_coats

    jobs.refit.items.DOOR.old_coats: [{id: factory, family: oem_finish, thickness: 110 um}]    # at jobs.refit.items.DOOR.strip_limit
    jobs.refit.items.DOOR.strip_limit: 200 um

    jobs.refit.items.DOOR.old_coats: [{id: factory, family: oem_finish, thickness: 121 um}]    # warning at jobs.refit.items.DOOR.old_coats

    jobs.refit.items.DOOR.old_coats: [{id: under, family: epoxy_2k, thickness: 101 um}, {id: factory, family: oem_finish, thickness: 120 um}]
    jobs.refit.items.DOOR.strip_limit: 350 um    # at jobs.refit.items.DOOR.strip_limit

    jobs.refit.items.STEP.old_coats: [{id: factory, family: epoxy_2k, thickness: 230 um}]    # at jobs.refit.items.STEP.old_coats

    Given second good
    without jobs.rails.items.LOCKER.strip_limit    # note at jobs.rails.items.LOCKER.old_coats

    Given second good
    jobs.rails.items.LOCKER.strip_limit: 15.9 mil    # at jobs.rails.items.LOCKER.strip_limit

    jobs.refit.items.DOOR.old_coats: [{id: under, family: epoxy_2k}, {id: factory, family: oem_finish, thickness: 100 um}]    # note at jobs.refit.items.DOOR.old_coats    # also INS012 at jobs.refit.items.DOOR.old_coats.under.thickness

    Given a coat with no film limits at all
    jobs.refit.items.DOOR.old_coats: [{id: factory, family: oem_finish, thickness: 100 um}]    # note at jobs.refit.items.DOOR.old_coats
To put right
    Strip to the electrocoat or the metal before painting, or remove as much as is applied.
"""

from specgen.facts.job.exposure import like_a_vehicle
from specgen.facts.job.stack import Stack, stacks
from specgen.facts.pairs.overcoat import table_row
from specgen.rules.kit import (
    ERROR,
    LOGIC,
    NOTE,
    WARNING,
    Concern,
    Job,
    Problem,
    Problems,
    Quantity,
    Spec,
    date,
    rule,
    table,
)

_STRIP, _WARN = "vehicle_total_strip", "vehicle_total_warn"


@rule("OLD010", on=Job, severity=ERROR, concern=Concern.FILM, source=table_row("family_film_limits", _STRIP))
def build_not_too_thick(job: Job, spec: Spec, on: date) -> Problems:
    for stack in stacks(job, spec):
        if stack.old:
            yield from _judge(stack, vehicle=like_a_vehicle(job, stack.item, stack.system))


def _judge(stack: Stack, *, vehicle: bool) -> Problems:
    path, own = ("items", stack.item.id), stack.item.strip_limit
    build = stack.build()
    if build is None:
        lacking = next(new.layer.id for new in stack.new if new.film is None)
        what = f"the total DFT on {stack.item.id} cannot be assessed: the coat {lacking} has no nominal DFT"
        yield Problem((*path, "old_coats"), what, "write the nominal DFT of the coat", severity=NOTE)
        return
    unread = stack.unmeasured()
    said = f"existing and new coats on {stack.item.id} have a total DFT of {'at least ' if unread else ''}{build}"
    strip, warn = _limit(_STRIP), _limit(_WARN)
    if own is not None and build > own:
        yield Problem((*path, "strip_limit"), f"{said}, above the strip limit of {own}", source=LOGIC)
    elif own is None and build > strip:
        whose = "" if vehicle else "; the figure is one for vehicles, and steelwork carries thicker systems"
        what = f"{said}, above the {strip} at which an existing coating is stripped{whose}"
        yield Problem((*path, "old_coats"), what, severity=None if vehicle else NOTE)
    elif own is None and build > warn and vehicle:
        what = f"{said}, above the {warn} from which the existing coating is stripped"
        yield Problem((*path, "old_coats"), what, severity=WARNING, source=table_row("family_film_limits", _WARN))
    elif unread and _measured_in_part(stack):
        names, limit = ", ".join(old.coat.id for old in unread), own or warn
        what = f"the limit of {limit} cannot be assessed: {said}; not measured: {names}"
        yield Problem((*path, "old_coats"), what, "measure every existing coat", severity=NOTE)


def _measured_in_part(stack: Stack) -> bool:
    """Where no existing coat was measured at all, the rule on reading each coat in time says so."""
    return len(stack.unmeasured()) < len(stack.old)


def _limit(key: str) -> Quantity:
    figure = table("family_film_limits").row("id", key)["most_um"]
    return Quantity.of("thickness", int(figure), "um", figure)
