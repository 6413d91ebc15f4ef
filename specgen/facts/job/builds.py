"""The builds of a job: its items grouped by the substrate, preparation and system they share.

Called by the documents of a job. Items are grouped in the order of the job. Systems that differ in variant and film alone, as where an
item has another colour, are one build.
"""

from __future__ import annotations

from typing import NamedTuple

from specgen.model.job import Item, Job
from specgen.model.preparation import Preparation, Substrate
from specgen.model.spec import Spec
from specgen.model.system import System

MOST_COATS = 200
"""Coats of all builds on all vehicles that one file of cards has room for; more come in several."""


class Build(NamedTuple):
    """One way of building up paint: its items, and what they share. Letters run A to Z, then A1, A2 and on.

    `painted` are its systems, each with its items: one, or several that differ in variant and film; `system` is the first.
    """

    letter: str
    items: tuple[Item, ...]
    painted: tuple[tuple[System, tuple[Item, ...]], ...]
    system: System
    preparation: Preparation
    substrate: Substrate


def builds_of(job: Job, spec: Spec) -> tuple[Build, ...]:
    """Every build of the job, lettered in the order it first appears.

    Raises ValueError for an item without system, preparation or substrate, which checking refuses.
    """
    found: dict[tuple[str, str, str], list[Item]] = {}
    # most items have all three from the job
    keys: dict[tuple[int, int, int], tuple[str, str, str]] = {}
    for item in job.items:
        system, preparation, substrate = _of(item, job, spec)
        very = (id(system), id(preparation), id(substrate))
        if very not in keys:
            keys[very] = (_alike(system), preparation.id, substrate.model_dump_json())
        found.setdefault(keys[very], []).append(item)
    return tuple(
        Build(_letter(number), tuple(items), _painted(items, job, spec), *_of(items[0], job, spec))
        for number, items in enumerate(found.values())
    )


def _alike(system: System) -> str:
    """The same text for systems that differ in variant and film alone."""
    coats = {"layers": {"__all__": {"variant", "film"}}}
    return system.model_dump_json(exclude={"id": True, "document": True, "total": True, **coats})


def _painted(items: list[Item], job: Job, spec: Spec) -> tuple[tuple[System, tuple[Item, ...]], ...]:
    by_system: dict[str, list[Item]] = {}
    systems: dict[str, System] = {}
    for item in items:
        system, *_ = _of(item, job, spec)
        systems[system.id] = system
        by_system.setdefault(system.id, []).append(item)
    return tuple((systems[key], tuple(mine)) for key, mine in by_system.items())


def _letter(number: int) -> str:
    return chr(ord("A") + number) if number < 26 else f"A{number - 25}"


def _of(item: Item, job: Job, spec: Spec) -> tuple[System, Preparation, Substrate]:
    system, preparation = spec.system_of(job, item), spec.preparation_of(job, item)
    substrate = spec.substrate_of(job, item)
    if system is None or preparation is None or substrate is None:
        raise ValueError(f"the item {item.id} is not complete; checking refuses it before it gets here")
    return system, preparation, substrate
