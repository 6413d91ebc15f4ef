"""DOC011 Where the scope says a part stands, and what it holds, the job says it too

Checks
    The scope of each job in words: parts that are said to stand, hang or be installed outdoors are not all stated as interior, nor those indoors, or coated inside only, all as exterior; parts said to stand or lie in water are stated as immersed or splashed; a temperature they are said to reach in service is not above what all items state, nor above the continuous limit of the weakest coat of every system; what they are said to hold is the medium they are stated to be immersed in. What is said of the work, of the medium in a pipe or duct, of short peaks, or denied, is not read.
Why
    All that is checked rests on the service that is typed: a bed that stands in sea water is given the paint of a dry hall.
Passes
    Given second good
    jobs.rails.scope: Rails that stand outdoors, beside the water.

    jobs.refit.items.STEP.system: cab
    jobs.refit.scope: Doors and steps; in service they reach 80 °C, for short peaks 120 °C.

    jobs.refit.exposure: interior
    jobs.refit.scope: Doors and steps; cans do not stand outdoors. The steps stand in a hall by the sea.

    Given second good
    jobs.rails.scope: Rails and lids; parts stand in a hall for 7 days to cure. Leaks are tested under water.
Fails
    jobs.refit.exposure: interior
    jobs.refit.scope: Doors and steps of stalls standing outdoors by the sea.    # at jobs.refit.scope

    Given second good
    jobs.rails.scope: Rails of shelves, installed indoors.    # at jobs.rails.scope

    Given second good
    jobs.rails.scope: Rails of locks that stand in sea water.    # at jobs.rails.scope

    Given second good
    jobs.rails.scope: Rails whose feet dip into the river.    # at jobs.rails.scope

    Given second good
    jobs.rails.scope: Boxes coated on the inside only.    # at jobs.rails.scope

    jobs.refit.items.STEP.system: cab
    jobs.refit.scope: Doors and steps of ovens; in service they reach 180 °C.    # at jobs.refit.scope
To put right
    Type the exposure, environment and service temperature as they are, and choose the systems for them, or put right the scope.
"""

import re

from specgen.facts.job.exposure import environment_of, exposure_of, in_water
from specgen.facts.job.in_words import quantities_said
from specgen.facts.job.said_of_service import another_medium
from specgen.facts.texts import CLAUSE
from specgen.model.environment import EnvironmentKind
from specgen.model.job import Exposure
from specgen.rules.kit import LOGIC, WARNING, Job, Problem, Problems, Quantity, Spec, System, date, rule

_OTHER = re.compile(
    r"\b(?:not|no|never|nothing|until|unless|if|when|while|during|before|after|existing|old|later|instead|without|or|"
    r"coat(?:ed|ing|s)?|paint(?:ed|ing)?|spray\w*|cur(?:e|es|ed|ing)|dr(?:y|ies|ied|ying)|bak\w*|stov\w*|store[ds]?|storage|transport\w*|"
    r"test\w*|wash\w*|rins\w*|clean\w*|cool\w*|scaffold\w*|for (?:a|\w+) (?:weeks?|days?|hours?|nights?))\b",
    re.I,
)
_STANDS = r"\b(?:stand(?:s|ing)?|hang(?:s|ing)?|mounted|installed|set up|exposed|(?:in|for) (?:use|service))\b"
_OUTDOORS = re.compile(
    rf"{_STANDS}.*\b(?:outdoors|out of doors|in the open(?: air)?|by the sea|at the coast|offshore|to the weather)\b",
    re.I,
)
_INDOORS = re.compile(rf"{_STANDS}.*\b(?:indoors|in (?:a|the) (?:heated |closed )?(?:hall|room|building))\b", re.I)
_SHELTERED = re.compile(r"\b(?:roof|hall|rooms?|building|indoors|inside|cabinet|cover\w*)\b", re.I)
_OPEN = re.compile(r"\b(?:open|outdoors|weather|roof)\b", re.I)
_IN_WATER = re.compile(
    r"\b(?:stand(?:s|ing)?|l(?:ie|ies|ying)|hang(?:s|ing)?|immersed|submerged|dip(?:s|ping)?|sunk|reach(?:es)?)\b(?: \w+){0,3}? (?:in|into|under|below) (?:the )?"
    r"(?:(?:(?:sea|fresh|salt|river|harbour|brackish|drinking|waste|process) ?)?(?:water|seawater)\b(?! (?:works|treatment|plant|supply|line))|"
    r"(?:river|sea|lake|canal|sewage|ground ?water|estuary|tidal zone)\b)",
    re.I,
)
_INSIDE_ONLY = re.compile(
    r"\b(?:coat(?:ed|ing)?|paint(?:ed|ing)?|primed|lined|work)\b[^,;]{0,30}?\b(?:inside only|on the inside|inside alone)\b|"
    r"\b(?:inside|interior)(?: faces| surfaces)? only\b",
    re.I,
)
_OUTSIDE_ONLY = re.compile(r"\b(?:outside|exterior)(?: faces| surfaces)? only\b", re.I)
_IN_SERVICE = re.compile(r"\bin (?:service|use|operation)\b|\b(?:run|work|operate)s? at\b", re.I)
_OTHER_HEAT = re.compile(
    r"\b(?:short|briefly|peaks?|gas|gases|oil|steam|water|medium|contents?|air|liquid|insulat\w*)\b", re.I
)


@rule("DOC011", on=Job, severity=WARNING, source=LOGIC)
def scope_names_the_service(job: Job, spec: Spec, on: date) -> Problems:
    exposures = {exposure_of(job, item) for item in job.items}
    systems = list(spec.systems_of(job))
    for clause in CLAUSE.split(job.scope):
        if exposures == {Exposure.EXTERIOR} and _INSIDE_ONLY.search(clause) and _sunlit(job):
            yield Problem(
                ("scope",), f"the scope of {job.id} says '{clause.strip()}'; its exposure is stated as exterior"
            )
        if exposures == {Exposure.INTERIOR} and _OUTSIDE_ONLY.search(clause):
            yield Problem(
                ("scope",), f"the scope of {job.id} says '{clause.strip()}'; its exposure is stated as interior"
            )
        medium = another_medium(clause, job)
        if medium is not None:
            yield Problem(("scope",), f"the scope of {job.id} says '{clause.strip()}'; {medium}")
        if _OTHER.search(clause):
            continue
        said = f"the scope of {job.id} says '{clause.strip()}'"
        if _IN_WATER.search(clause):
            if _dry(job, systems):
                yield Problem(("scope",), f"{said}; no part of it is stated as immersed or splashed")
        elif exposures == {Exposure.INTERIOR} and _OUTDOORS.search(clause) and not _SHELTERED.search(clause):
            yield Problem(("scope",), f"{said}; its exposure is stated as interior")
        elif exposures == {Exposure.EXTERIOR} and _INDOORS.search(clause) and not _OPEN.search(clause):
            yield Problem(("scope",), f"{said}; its exposure is stated as exterior")
        heat = quantities_said(clause, "temperature") if _IN_SERVICE.search(clause) else []
        if heat and not _OTHER_HEAT.search(clause):
            limit = _limit(max(heat, key=lambda one: one.base), job, systems, spec)
            if limit is not None:
                yield Problem(("scope",), f"{said}; {limit}")


def _sunlit(job: Job) -> bool:
    """True where nothing says that the weather does not reach the parts."""
    found = [environment_of(job, item) for item in job.items]
    return all(one is None or (one.kind is EnvironmentKind.ATMOSPHERE and one.sun is not False) for one in found)


def _dry(job: Job, systems: list[System]) -> bool:
    """True where something is stated of the service of every part, and none is in water."""
    stated = all(environment_of(job, item) is not None or exposure_of(job, item) is not None for item in job.items)
    claimed = any(system.category is not None and system.category.immersion is not None for system in systems)
    return stated and bool(job.items) and not claimed and not any(in_water(job, item) for item in job.items)


def _limit(said: Quantity, job: Job, systems: list[System], spec: Spec) -> str | None:
    """What a temperature in service is above: what every item states, else the weakest coat of every system."""
    stated = [item.service_temperature for item in job.items if item.service_temperature is not None]
    if stated and len(stated) == len(job.items):
        most = max(stated, key=lambda one: one.base)
        return f"its items reach at most {most}" if said > most else None
    weakest = [
        min(limits, key=lambda one: one.base)
        for system in systems
        if (
            limits := [
                product.service_temperature.continuous_max
                for product in spec.products_in(system)
                if product.service_temperature is not None and product.service_temperature.continuous_max is not None
            ]
        )
    ]
    if not weakest or len(weakest) < len(systems) or any(said <= one for one in weakest):
        return None
    return f"the continuous limit of its coats is {max(weakest, key=lambda one: one.base)}"
