"""What the record of one held limit is, and how films, ranges and grades are held against it. Called by `limits` and `of_coats`."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from enum import StrEnum
from typing import NamedTuple

from specgen.facts import requirement
from specgen.model.contract_document import ClauseLimit
from specgen.model.film import FilmLimits
from specgen.model.job import Item, Job
from specgen.model.preparation import Preparation
from specgen.model.spec import Spec
from specgen.model.system import System
from specgen.model.walk import Path
from specgen.units.count import Count
from specgen.units.locale import N_, phrase
from specgen.units.quantity import CalendarSpan, Quantity

Value = requirement.Value | Count | CalendarSpan | StrEnum


class Verdict(StrEnum):
    """Whether the job meets what is asked."""

    MET = "met"
    NOT_MET = "not met"
    NOT_TOLD = "cannot be told"
    NOT_ANSWERED = "not answered"
    BY_WORD = "met as stated"
    DEVIATION = "deviation agreed"
    NOT_APPLICABLE = "does not apply"
    PERMISSION = "permission"
    MOVED = "moved"


# From the one that says most against the job to the one that says least; several limits of a clause give the first of theirs.
GRAVEST = (Verdict.NOT_MET, Verdict.NOT_ANSWERED, Verdict.NOT_TOLD, Verdict.MET)


class Held(NamedTuple):
    """One limit of a clause and what the job states for it.

    `what` names the limit, `asked` is its value, `found` what the job states, None where it states nothing; `path` is the address of
    that, or of the place where it is missing. `why` says what cannot be told, `borrowed` that the value is the product's own; `of` is
    what a requirement on a product is on.
    """

    what: str
    asked: Value
    found: Value | tuple[Value, ...] | None
    path: Path
    verdict: Verdict
    why: str = ""
    borrowed: bool = False
    of: requirement.Asked | None = None


class Ground(NamedTuple):
    """What a limit is held against: the items of the job it applies to, with their systems and preparations, each once."""

    job: Job
    spec: Spec
    items: tuple[Item, ...]

    @property
    def systems(self) -> tuple[System, ...]:
        found = (self.spec.system_of(self.job, item) for item in self.items)
        return tuple({system.id: system for system in found if system is not None}.values())

    @property
    def preparations(self) -> tuple[Preparation, ...]:
        found = (self.spec.preparation_of(self.job, item) for item in self.items)
        return tuple({one.id: one for one in found if one is not None}.values())

    def narrowed(self, limit: ClauseLimit) -> Ground:
        """The items of a material the limit names."""
        if not limit.materials:
            return self
        kept = []
        for item in self.items:
            substrate = self.spec.substrate_of(self.job, item)
            if substrate is not None and substrate.material in limit.materials:
                kept.append(item)
        return Ground(self.job, self.spec, tuple(kept))


class Ours(NamedTuple):
    """One film of ours with its address and whether the product lends it."""

    value: Quantity
    path: Path
    borrowed: bool = False


_BOUNDS: Mapping[str, str] = {
    "min": N_("{film}, minimum"),
    "nominal": N_("{film}, nominal"),
    "max": N_("{film}, maximum"),
}


def verdict_of(met: bool | None) -> Verdict:
    return Verdict.NOT_TOLD if met is None else Verdict.MET if met else Verdict.NOT_MET


def held_films(asked: FilmLimits, ours: Mapping[str, Ours], missing: Path, named: str) -> Iterator[Held]:
    """The film limits a clause states against ours; the nominal asked is the least that ours may be."""
    for bound, word in _BOUNDS.items():
        limit: Quantity | None = getattr(asked, bound)
        if limit is None:
            continue
        met, by = _MET[bound](limit, ours)
        film = ours.get(by)
        what = phrase(word, film=phrase(named))
        if film is None:
            yield Held(what, limit, None, missing, Verdict.NOT_TOLD, N_("no such limit is stated"))
        else:
            why = N_("the limit stated is of another kind") if met is None else ""
            yield Held(what, limit, film.value, film.path, verdict_of(met), why, film.borrowed)


def _least(limit: Quantity, ours: Mapping[str, Ours]) -> tuple[bool | None, str]:
    if "min" in ours:
        return ours["min"].value >= limit, "min"
    for other in ("nominal", "max"):
        if other in ours:
            return (False if ours[other].value < limit else None), other
    return None, ""


def _most(limit: Quantity, ours: Mapping[str, Ours]) -> tuple[bool | None, str]:
    if "max" in ours:
        return ours["max"].value <= limit, "max"
    for other in ("nominal", "min"):
        if other in ours:
            return (False if ours[other].value > limit else None), other
    return None, ""


def _nominal(limit: Quantity, ours: Mapping[str, Ours]) -> tuple[bool | None, str]:
    if "nominal" in ours:
        return ours["nominal"].value >= limit, "nominal"
    if "min" in ours and ours["min"].value >= limit:
        return True, "min"
    if "max" in ours and ours["max"].value < limit:
        return False, "max"
    return None, "min" if "min" in ours else "max"


_MET = {"min": _least, "nominal": _nominal, "max": _most}
