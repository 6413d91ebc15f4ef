"""DOC009 Instructions in words keep the times and limits of the job

Checks
    The instructions in words of each job (its scope, its inspection, what is done between its coats): parts are not handled, stacked or fitted, nor filled, put to work or into service, sooner after the last coat than every system of the job states (a time by nights, as the next morning, at the longest it can mean); no more thinner is added than every product allows, and none to paint nearly free of solvent that states no thinner; work does not go on in colder or hotter air, on a colder or hotter surface, in damper air or nearer to the dew point than the job's ambient conditions allow, nor is the air kept drier than the product of the coat, or a moisture-curing product of the job, allows; the scope does not speak of both coats where every system has three or more. What says that it is not done passes.
Why
    The crew reads the sentence, not the table behind it: a tank filled after three days by the scope is lost, whatever the system states.
Passes
    jobs.refit.scope: Doors and step. Nothing is stacked after only 2 h; cans are kept at 5 to 30 °C.

    systems.chassis.handle_after: 24 h
    systems.cab.handle_after: 24 h
    jobs.refit.scope: Doors and step; parts are stacked 24 h after the last coat.

    systems.chassis.service_after: 7 days
    systems.cab.service_after: 7 days
    jobs.refit.scope: Doors and step. The painters are back at work the next morning; the vehicle returns to the road after a week.

    systems.chassis.handle_after: 24 h
    systems.cab.handle_after: 24 h
    jobs.refit.scope: Doors and step. They are wrapped and stacked the next day.

    jobs.refit.scope: Doors and step, coated down to 15 °C.

    jobs.refit.scope: Doors and step, coated while the metal is below 40 °C.

    jobs.refit.scope: Doors and step. Cans stored at 5 °C are warmed before they are sprayed; a drop of thinner cleans the gun.

    systems.cab.layers.primer.before_next: Keep the air of the booth below 80 % humidity.

    jobs.refit.scope: Doors and step. Parts are sprayed at 20 degC and stoved at 60 degC.

    jobs.refit.scope: Doors and step. Parts are sprayed at 3 bar and stoved at 60 degC.

    jobs.refit.scope: Doors and step. Coat the steel parts at 20 to 30 degC beside the oven.

    jobs.refit.scope: Doors and step. Stove the coat on metal at 60 degC for 30 min.
Fails
    jobs.refit.scope: Doors and step. Coat the steel parts at 25 to 35 degC beside the oven.    # at jobs.refit.scope

    jobs.refit.scope: Doors and step. Parts are sprayed at 80 degC beside the oven.    # at jobs.refit.scope

    systems.chassis.handle_after: 24 h
    systems.cab.handle_after: 24 h
    jobs.refit.scope: Doors and step; parts are stacked 6 h after the last coat.    # at jobs.refit.scope

    systems.chassis.service_after: 14 days
    systems.cab.service_after: 14 days
    jobs.refit.scope: Doors and step; put into service after three days.    # at jobs.refit.scope

    systems.chassis.service_after: 7 days
    systems.cab.service_after: 7 days
    jobs.refit.scope: Doors and step; the vehicle is back on the road the next morning.    # at jobs.refit.scope

    systems.chassis.handle_after: 36 h
    systems.cab.handle_after: 36 h
    jobs.refit.scope: Doors and step; parts are stacked the next morning.    # at jobs.refit.scope

    jobs.refit.scope: Chassis frame, the barrier coat with 25 % thinner.    # at jobs.refit.scope

    jobs.refit.scope: Chassis frame, the barrier coat thinned 25 %.    # at jobs.refit.scope

    jobs.refit.scope: Chassis frame; a litre of thinner goes into four litres.    # at jobs.refit.scope

    jobs.refit.scope: Doors and step, sprayed in the early morning at 3 °C.    # at jobs.refit.scope

    jobs.refit.scope: Doors and step; at night the hall falls to 2 °C while the film dries.    # at jobs.refit.scope

    jobs.refit.scope: Doors and step, coated down to 3 °C.    # at jobs.refit.scope

    jobs.refit.scope: Doors and step, sprayed on metal of 55 °C.    # at jobs.refit.scope

    jobs.refit.scope: Doors and step, sprayed while they are still at about 60 °C.    # at jobs.refit.scope

    jobs.refit.scope: Doors and step, sprayed up to 95 % humidity.    # at jobs.refit.scope

    systems.cab.layers.primer.before_next: Dry the air of the booth to less than 30 % humidity.    # at systems.cab.layers.primer.before_next
    products.primer.climate.humidity: 50..80 %    # also CLI001 at jobs.refit.climate.humidity

    jobs.refit.climate.dew_point_margin: min 3 K
    jobs.refit.scope: Doors and step, coated at 1 K above the dew point.    # at jobs.refit.scope    # also JOB018 at jobs.refit.scope

    jobs.refit.items.STEP.system: cab
    jobs.refit.scope: Doors and step, given both coats in the shop.    # at jobs.refit.scope
To put right
    Write into the text what the system, the product or the ambient conditions state, or put these right.
"""

import re
from collections.abc import Iterator
from fractions import Fraction

from specgen.facts.job.cold_in_words import colder
from specgen.facts.job.dew_point import both_general
from specgen.facts.job.in_words import quantities_said
from specgen.facts.job.instructions import instructions
from specgen.facts.job.thinner_in_words import too_much_thinner
from specgen.facts.job.times_in_words import DENIED, released_too_early
from specgen.facts.texts import CLAUSE
from specgen.model.product import ApplicationClimate, CuringKind
from specgen.rules.kit import LOGIC, WARNING, Job, Path, Problem, Problems, Quantity, Spec, date, rule

_AT_WORK = re.compile(
    r"\b(?:coat(?:s|ed|ing)?|paint(?:s|ed|ing)?|spray(?:s|ed|ing)?|appl(?:y|ies|ied)|work|roll(?:s|ed|ing)?|brush(?:ed|ing)?|prim(?:e|ed|ing)|laid|lay|lined|allowed|accepted|permitted)\b",
    re.I,
)
_IN_USE = re.compile(
    r"\bservice|operat|\bheat|cur(?:e|ing)|stov|oven|bak(?:e|ing)|stor(?:e|age)|in use|cans?\b|kept|dew", re.I
)
_DOWN_TO = re.compile(r"\b(?:down to|as low as|from|at least|min(?:imum)?(?: of)?|≥) (?=-?\d)", re.I)
_UP_TO = re.compile(
    r"\b(?:up to|as hot as|as high as|hotter than|on (?:hot )?(?:steel|metal|zinc|aluminium|parts?|surfaces?|panels?) (?:of|at)|at most|max(?:imum)?) "
    r"(?:\w+ ){0,3}?(?=\d)|"
    r"\b(?:coated|painted|sprayed|lined|primed) at (?=\d+(?:\.\d+)? ?(?:°C|degC|°F|degF) (?:steel|metal|surface))|"
    r"\b(?:still|while|whilst)\b(?: (?!below|under|less|not|cool\w*|dew)\w+){0,6}? (?=\d)",
    re.I,
)
_LAID_AT = re.compile(
    r"\b(?:coated|painted|sprayed|lined|primed|brushed|rolled) (?:(?:hot|warm) )?at (?=\d)|"
    r"\b(?:spray|paint|coat|prime|line)s? (?:(?:the|all|each|every|these|bare|cleaned|blasted|primed|steel|metal|cast) ){0,3}?"
    r"(?:parts?|steel|metal|castings?|panels?|plates?) at (?=\d)",
    re.I,
)
_FIGURE = re.compile(r"[\d.]+(?: ?(?:to|and|-|–) ?[\d.]+)? ?\S+")
_DRY_AIR = re.compile(
    r"\b(?:(?:to |at )?(?:less than|below|under|at most|no more than|down to)|dr(?:y|ied) to|not above) (\d+(?:\.\d+)?) ?% (?:relative |air )?(?:humidity|RH)\b|"
    r"\bhumidity (?:\w+ ){0,3}?(?:less than|below|under|at most|no more than|down to|not above) (\d+(?:\.\d+)?) ?%",
    re.I,
)
_WAITS = re.compile(
    r"\b(?:stop\w*|wait\w*|mist\w*|damp\w*|wet\w*|moisten\w*|humidif\w*|if|where|when|never|store\w*|stor(?:e|age|ing))\b",
    re.I,
)
_HUMIDITY = re.compile(
    r"(\d+(?:\.\d+)?) ?% (?:relative |air )?(?:humidity|RH)\b|\bhumidity (?:\w+ ){0,3}?(\d+(?:\.\d+)?) ?%", re.I
)
_DOWN_TO_HUMIDITY = re.compile(
    r"\bhumidity (?:\w+ ){0,2}?(?:at least|from|down to|as low as|not below) (\d+(?:\.\d+)?) ?%|"
    r"\b(?:at least|down to|as low as|from) (\d+(?:\.\d+)?) ?% (?:relative |air )?(?:humidity|RH)\b",
    re.I,
)
_MARGIN = re.compile(r"(\d+(?:\.\d+)?) ?(?:K|°|deg ?)?(C|F)?\b (?:\w+ )?above (?:the )?dew point", re.I)
_BOTH = re.compile(r"\bboth coats\b(?! of\b)", re.I)


@rule("DOC009", on=Job, severity=WARNING, source=LOGIC)
def words_keep_the_limits(job: Job, spec: Spec, on: date) -> Problems:
    for path, text in instructions(job, spec):
        for clause in CLAUSE.split(text):
            if not DENIED.search(clause):
                for what in _beyond(clause, job, spec, in_scope=path[-1] == "scope"):
                    yield Problem(path, f"the words of {job.id} say {what}", absolute=True)
            for what in _too_dry(clause, path, job, spec):
                yield Problem(path, f"the words of {job.id} say {what}", absolute=True)
    if _BOTH.search(job.scope) and all(len(system.layers) > 2 for system in spec.systems_of(job)):
        counts = ", ".join(f"{system.id} has {len(system.layers)}" for system in spec.systems_of(job))
        if counts:
            yield Problem(("scope",), f"the words of {job.id} say 'both coats'; {counts}")


def _beyond(clause: str, job: Job, spec: Spec, *, in_scope: bool) -> Iterator[str]:
    yield from released_too_early(clause, list(spec.systems_of(job)))
    yield from too_much_thinner(clause, list(spec.products_of(job)))
    if _AT_WORK.search(clause) and not _IN_USE.search(clause) and job.climate is not None:
        lows = [one.low for one in (job.climate.air, job.climate.surface) if one is not None and one.low is not None]
        for match in _DOWN_TO.finditer(clause):
            said = quantities_said(clause[match.end() :], "temperature")
            if said and lows and said[0] < min(lows, key=lambda low: low.base):
                yield f"'{clause.strip()}'; the ambient conditions begin at {min(lows, key=lambda low: low.base)}"
        yield from _too_hot_or_damp(clause, job.climate)
    elif job.climate is not None:
        yield from _laid_hot(clause, job.climate)
    if job.climate is not None and in_scope:
        yield from colder(clause, job.climate)
    # what an inspection point accepts has a rule of its own
    if job.climate is not None and (in_scope or _AT_WORK.search(clause)):
        yield from _near_the_dew_point(clause, job.climate)
        yield from _drier(clause, job.climate)


def _laid_hot(clause: str, climate: ApplicationClimate) -> Iterator[str]:
    """Paint laid at a temperature that is said to be that of the part, though an oven or its use is named beside."""
    most = climate.surface.high if climate.surface is not None else None
    for match in _LAID_AT.finditer(clause) if most is not None else ():
        figure = _FIGURE.match(clause, match.end())
        said = quantities_said(figure[0], "temperature") if figure is not None else []
        if said and most is not None and said[0] > most:
            yield f"'{clause.strip()}'; the surface may have at most {most}"


def _too_hot_or_damp(clause: str, climate: ApplicationClimate) -> Iterator[str]:
    highs = [one.high for one in (climate.air, climate.surface) if one is not None and one.high is not None]
    said = quantities_said(clause, "temperature") if _UP_TO.search(clause) and not _MARGIN.search(clause) else []
    if highs and said and max(said, key=lambda one: one.base) > max(highs, key=lambda one: one.base):
        yield f"'{clause.strip()}'; the ambient conditions end at {max(highs, key=lambda one: one.base)}"
    humid = _HUMIDITY.search(clause)
    most = climate.humidity.high if climate.humidity is not None else None
    if humid is not None and most is not None and Fraction(humid[1] or humid[2]) > most.to("%"):
        yield f"'{clause.strip()}'; the humidity may be at most {most}"


def _too_dry(clause: str, path: Path, job: Job, spec: Spec) -> Iterator[str]:
    """Air kept at or below the least humidity at which the product of the coat, or one of the job that cures by moisture, is applied."""
    found = _DRY_AIR.search(clause)
    if found is None or _WAITS.search(clause):
        return
    products = list(spec.products_of(job))
    if path[0] == "systems":
        _, system_id, _, layer_id, *_ = path
        products = [spec.product_of(layer) for layer in spec.systems[system_id].layers if layer.id == layer_id]
    for product in products:
        humid = product.climate.humidity if product.climate is not None else None
        least = humid.low if humid is not None else None
        cures_by_it = product.curing is CuringKind.MOISTURE or path[0] == "systems"
        if least is not None and cures_by_it and Fraction(found[1] or found[2]) <= least.to("%"):
            yield f"'{clause.strip()}'; {product.id} needs a humidity of at least {least}"
            return


def _drier(clause: str, climate: ApplicationClimate) -> Iterator[str]:
    least = climate.humidity.low if climate.humidity is not None else None
    for match in _DOWN_TO_HUMIDITY.finditer(clause) if least is not None else ():
        if least is not None and Fraction(match[1] or match[2]) < least.to("%") and not _IN_USE.search(clause):
            yield f"'{clause.strip()}'; the humidity has to be at least {least}"


def _near_the_dew_point(clause: str, climate: ApplicationClimate) -> Iterator[str]:
    least = climate.dew_point_margin.low if climate.dew_point_margin is not None else None
    for match in _MARGIN.finditer(clause) if least is not None else ():
        unit = "degF" if match[2] == "F" else "K"
        said = Quantity.of("temperature_difference", Fraction(match[1]), unit, match[1])
        if least is not None and said < least and not both_general(said, least):
            yield f"'{clause.strip()}'; the surface has to be at least {least} above the dew point"
