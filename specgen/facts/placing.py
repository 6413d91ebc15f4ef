"""Which items of which jobs get a system or a preparation, gathered once a specification. Called by `usage`, `plan` and rules."""

from __future__ import annotations

from collections.abc import Iterable, Iterator

from specgen.facts.memo import memoised
from specgen.model.job import Item, Job
from specgen.model.preparation import Preparation
from specgen.model.spec import Spec
from specgen.model.system import System

Placed = tuple[Job, Item]


def items_painted_with(system: System, spec: Spec) -> tuple[Placed, ...]:
    """The items that get the system, in the order of the jobs."""
    return _by_system(spec).get(system.id, ())


def items_prepared_with(preparation: Preparation, spec: Spec) -> tuple[Placed, ...]:
    """The items that get the preparation, in the order of the jobs."""
    return _by_preparation(spec).get(preparation.id, ())


def jobs_painted_with(system: System, spec: Spec) -> tuple[Job, ...]:
    """The jobs with an item that gets the system, each once."""
    return tuple({job.id: job for job, _ in items_painted_with(system, spec)}.values())


@memoised
def _by_system(spec: Spec) -> dict[str, tuple[Placed, ...]]:
    return _gathered((item.system or job.system, job, item) for job, item in _all(spec))


@memoised
def _by_preparation(spec: Spec) -> dict[str, tuple[Placed, ...]]:
    return _gathered((item.preparation or job.preparation, job, item) for job, item in _all(spec))


def _all(spec: Spec) -> Iterator[Placed]:
    return ((job, item) for job in spec.jobs.values() for item in job.items)


def _gathered(named: Iterable[tuple[str | None, Job, Item]]) -> dict[str, tuple[Placed, ...]]:
    found: dict[str, list[Placed]] = {}
    for key, job, item in named:
        if key is not None:
            found.setdefault(key, []).append((job, item))
    return {key: tuple(placed) for key, placed in found.items()}
