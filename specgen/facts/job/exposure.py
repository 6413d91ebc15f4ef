"""What the parts of a job meet in service: environment, sun, severity. Asked by rules and by the method statement.

An item that states an exposure or an environment is taken at its word for that; what it leaves out is the job's.
"""

from __future__ import annotations

from specgen.model.environment import Environment, EnvironmentKind
from specgen.model.job import Exposure, Item, Job
from specgen.model.system import Corrosivity, System
from specgen.model.walk import Path

# No exposure brings the sun there; to the underside of a part stated to be outdoors it may come.
_SHUT_OFF = {EnvironmentKind.IMMERSION, EnvironmentKind.BURIED, EnvironmentKind.CAVITY}
_WITHOUT_SUN = _SHUT_OFF | {EnvironmentKind.UNDERSIDE}
_SEVERE = {"C5", "CX"}


def exposure_of(job: Job, item: Item) -> Exposure | None:
    """The item's own exposure, else the job's."""
    return item.exposure or job.exposure


def environment_of(job: Job, item: Item) -> Environment | None:
    """The item's own environment, else the job's."""
    return item.environment or job.environment


def sun_on(job: Job, item: Item) -> tuple[bool, Path] | None:
    """Whether sunlight reaches the part, and where in the job that is said; None where nothing says it.

    What the item says goes before what the job says; of one record the environment goes before the exposure. Under water,
    in the ground and in a cavity there is none, unless that environment says so itself.
    """
    at: Path = ("items", item.id)
    held = environment_of(job, item)
    if held is not None and held.sun is None and held.kind in _SHUT_OFF:
        return False, (*(at if item.environment is not None else ()), "environment", "kind")
    for record, path in ((item, at), (job, ())):
        found = record.environment
        if found is not None and found.sun is not None:
            return found.sun, (*path, "environment", "sun")
        if found is not None and found.kind in _WITHOUT_SUN:
            return False, (*path, "environment", "kind")
        if record.exposure is not None:
            return record.exposure is Exposure.EXTERIOR, (*path, "exposure")
    return None


def in_water(job: Job, item: Item) -> bool:
    """True for a part that is immersed or splashed in service."""
    found = environment_of(job, item)
    return found is not None and found.kind in {EnvironmentKind.IMMERSION, EnvironmentKind.SPLASH}


def like_a_vehicle(job: Job, item: Item, system: System) -> bool:
    """True where the job names vehicles, and neither system nor environment has a category, as steelwork is given one."""
    return bool(job.vehicles) and not has_category(job, item, system)


def has_category(job: Job, item: Item, system: System) -> bool:
    """True where the system claims a corrosivity category, or the environment states one: its film is set by the category."""
    found = environment_of(job, item)
    return system.category is not None or (found is not None and found.category is not None)


def severe_service(job: Job, item: Item, system: System) -> bool:
    """True for immersion, and for corrosivity C5 or CX, of the item or claimed by its system."""
    claim, found = system.category, environment_of(job, item)
    claimed = claim is not None and (
        claim.corrosivity in {Corrosivity.C5, Corrosivity.CX} or claim.immersion is not None
    )
    return claimed or (
        found is not None and (found.kind is EnvironmentKind.IMMERSION or (found.category or "") in _SEVERE)
    )
