"""What is conceded in a job, from when, until when, and whether the limit that is eased is there. The one answer for rules, pages and
whoever judges readings.

A concession speaks of one limit by name. Of a range it eases the sides it states; the other stays as specified. It never reaches a hold
point, a party or a safety limit: those have no name here.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from datetime import date
from typing import Any, NamedTuple

from specgen.facts.job.counting import specified
from specgen.facts.job.criteria import criteria_of
from specgen.facts.job.inspected import places
from specgen.facts.tests.narrower import as_limit, narrower
from specgen.model.acceptance import InspectionPoint
from specgen.model.concession import EASED, Concession
from specgen.model.job import Item, Job
from specgen.model.preparation import Preparation
from specgen.model.product import ApplicationClimate
from specgen.model.spec import Spec
from specgen.model.walk import inner_record
from specgen.units.locale import N_
from specgen.units.quantity import Quantity, Range

NAMES = tuple(name for name in Concession.model_fields if inner_record(Concession, name) in EASED)
"""The limits that can be conceded, as a concession names them."""
FILM: Mapping[str, str] = {"film_min": "min", "film_nominal": "nominal", "film_max": "max"}
"""Limits of film, and what a criterion calls them."""
OF_A_POINT = frozenset({*FILM, "test", "words"})
"""Limits that belong to one inspection point."""
OF_THE_AIR = frozenset(ApplicationClimate.model_fields) & frozenset(NAMES)
OF_THE_SURFACE: Mapping[str, str] = {"salt": "salt_limit", "dust_quantity": "dust_quantity", "dust_size": "dust_size"}
"""Limits of the prepared surface, and what a preparation calls them."""
CALLED: Mapping[str, str] = {
    "film_min": N_("minimum DFT"),
    "film_nominal": N_("nominal DFT"),
    "film_max": N_("maximum DFT"),
    "salt": N_("soluble salts"),
    "dust_quantity": N_("dust quantity rating"),
    "dust_size": N_("dust size class"),
    "profile": N_("surface profile"),
    "test": N_("limit of the test"),
    "words": N_("criterion in words"),
    "air": N_("air temperature"),
    "surface": N_("surface temperature"),
    "humidity": N_("relative humidity"),
    "dew_point_margin": N_("surface above the dew point"),
}
"""What each limit is called on a page."""
_LOWER = frozenset({"film_min", "film_nominal"})


class Eased(NamedTuple):
    """One limit of a concession by its name."""

    name: str
    specified: Any
    conceded: Any


def eased(concession: Concession) -> tuple[Eased, ...]:
    """The limits it eases: one, where it is sound."""
    stated = ((name, getattr(concession, name)) for name in NAMES)
    return tuple(Eased(name, part.specified, part.conceded) for name, part in stated if part is not None)


def in_force(concession: Concession, day: date) -> bool:
    """From the day it was agreed on until its last day, both counted."""
    return concession.agreed_on <= day <= concession.until


def holds_for(concession: Concession, day: date, made: date) -> bool:
    """Whether what was made or read on a day may be accepted under it on a later one: agreed by then, and made by its last day. It may
    be granted for what was found, and what was accepted under it stays accepted once it has ended."""
    return concession.agreed_on <= day and made <= concession.until


def concessions_in(job: Job, spec: Spec) -> tuple[Concession, ...]:
    """Those of a job, in the order of the sources."""
    return tuple(one for one in spec.concessions.values() if one.job == job.id)


def granted(
    name: str, job: Job, spec: Spec, day: date, *, made: date, item: str, point: str = "", coat: str = ""
) -> Iterator[tuple[Concession, Eased]]:
    """The concessions that ease a limit of an item, at a point, while a coat is applied; judged on `day`, of what was `made` when."""
    for one in concessions_in(job, spec):
        if item not in one.items or not holds_for(one, day, made):
            continue
        if (one.point not in {None, point}) or (one.coat is not None and one.coat != coat):
            continue
        yield from ((one, limit) for limit in eased(one) if limit.name == name)


def asked(name: str, concession: Concession, item: Item, job: Job, spec: Spec) -> Any:
    """The limit of an item as the job specifies it, whatever is conceded; None where there is none."""
    point = next((one for one in job.inspection if one.id == concession.point), None)
    if name in OF_A_POINT:
        return _at_point(name, point, item, job, spec) if point is not None else None
    if name in OF_THE_AIR:
        return climate_asked(name, job, spec)
    preparation = spec.preparation_of(job, item)
    if preparation is None:
        return None
    return profile_asked(preparation) if name == "profile" else getattr(preparation, OF_THE_SURFACE[name])


def _at_point(name: str, point: InspectionPoint, item: Item, job: Job, spec: Spec) -> Any:
    if name == "test":
        return point.test.limit if point.test is not None else None
    if name == "words":
        return point.criterion.text
    if not any(one is item for one, _ in places(point, job, spec)):
        return None
    for held in criteria_of(point, job, spec):
        if not held.items or item in held.items:
            least, most = specified(held.criterion)
            films = {"film_min": least, "film_nominal": held.criterion.nominal, "film_max": most}
            return films[name]
    return None


def profile_asked(preparation: Preparation) -> Range | None:
    """The surface profile of the finished preparation: that of its last step that states one."""
    return next((step.profile for step in reversed(preparation.steps) if step.profile is not None), None)


def with_eased(preparation: Preparation, limit: Eased) -> Preparation:
    """The preparation with one of its limits as conceded."""
    if limit.name != "profile":
        return preparation.model_copy(update={OF_THE_SURFACE[limit.name]: limit.conceded})
    asked_for = profile_asked(preparation)
    last = next((step for step in reversed(preparation.steps) if step.profile is not None), None)
    if asked_for is None:
        return preparation
    wider = eased_range(asked_for, limit.conceded)
    steps = (step.model_copy(update={"profile": wider}) if step is last else step for step in preparation.steps)
    return preparation.model_copy(update={"steps": tuple(steps)})


def climate_asked(name: str, job: Job, spec: Spec) -> Range | None:
    """What is left by the job and all its products together."""
    climates = [job.climate, *(product.climate for product in spec.products_of(job))]
    stated: list[Range] = [kept for one in climates if one is not None and (kept := getattr(one, name)) is not None]
    if not stated:
        return None
    lows = [kept.low for kept in stated if kept.low is not None]
    highs = [kept.high for kept in stated if kept.high is not None]
    return Range(stated[0].kind, max(lows, default=None), min(highs, default=None))


def same_limit(stated: Any, job_asks: Any) -> bool:
    """True where what a concession calls specified is what the job asks for; of a range the sides it states."""
    if isinstance(stated, Range) and isinstance(job_asks, Range):
        return all(mine is None or mine == theirs for mine, theirs in _sides(stated, job_asks))
    if isinstance(stated, str) and isinstance(job_asks, str):
        return " ".join(stated.split()) == " ".join(job_asks.split())
    return bool(stated == job_asks)


def accepts_more(limit: Eased, point: InspectionPoint | None) -> bool:
    """True where what is conceded takes in what was specified, and more; of words nobody but a person can tell."""
    specified_, conceded = limit.specified, limit.conceded
    if limit.name == "words":
        return bool(specified_ != conceded)
    if limit.name == "test":
        return _test_accepts_more(specified_, conceded, point)
    if isinstance(conceded, Range):
        sides = [(mine, theirs) for mine, theirs in _sides(conceded, specified_) if mine is not None]
        if any(theirs is None for _, theirs in sides):
            return False  # a side that was open is shut
        whole = eased_range(specified_, conceded)
        return whole.holds_all_of(specified_) and not specified_.holds_all_of(whole)
    return bool(conceded < specified_ if limit.name in _LOWER else conceded > specified_)


def eased_range(asked_for: Range, conceded: Range) -> Range:
    """A range with the sides that are conceded."""
    low = conceded.low if conceded.low is not None else asked_for.low
    return Range(asked_for.kind, low, conceded.high if conceded.high is not None else asked_for.high)


def _sides(one: Range, other: Range) -> tuple[tuple[Quantity | None, Quantity | None], ...]:
    return (one.low, other.low), (one.high, other.high)


def _test_accepts_more(specified_: str, conceded: str, point: InspectionPoint | None) -> bool:
    """By the scale of the test's method; a limit in words only has to be another."""
    method = point.test.method if point is not None and point.test is not None else None
    if method is None or point is None or point.test is None:
        return specified_ != conceded
    before, after = as_limit(method, specified_), as_limit(method, conceded)
    if before is None or after is None:
        return specified_ != conceded
    standard = point.test.standard or ""
    inside, holds = narrower(method, standard, before, after), narrower(method, standard, after, before)
    return inside is not False and holds is not True
