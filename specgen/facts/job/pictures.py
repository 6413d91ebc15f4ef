"""The figures of a job with their numbers, and the marks on them. Called by the method statement and by a rule on inspection points."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass

from specgen.model.acceptance import InspectionPoint
from specgen.model.figure import Figure, Mark
from specgen.model.job import Item, Job
from specgen.model.preparation import Preparation, PreparationStep
from specgen.model.spec import Spec


@dataclass(frozen=True, slots=True, kw_only=True)
class Placed:
    """A figure under its number, and what it belongs to: for a step the preparation too, which two may share."""

    number: int
    figure: Figure
    owner: Job | Item | PreparationStep | InspectionPoint
    preparation: Preparation | None = None


def pictures_of(job: Job, spec: Spec) -> tuple[Placed, ...]:
    """Every figure once, in the order of job, parts, work and inspection."""
    return tuple(
        Placed(number=number, figure=figure, owner=owner, preparation=preparation)
        for number, (figure, owner, preparation) in enumerate(_in_order(job, spec), 1)
    )


def marks_of(job: Job, spec: Spec) -> Mapping[str, tuple[tuple[Placed, Mark], ...]]:
    """The marks by `figure/mark`, as inspection points name them; more than one where two figures share an id."""
    found: dict[str, tuple[tuple[Placed, Mark], ...]] = {}
    for placed in pictures_of(job, spec):
        for mark in placed.figure.marks:
            name = f"{placed.figure.id}/{mark.id}"
            found[name] = (*found.get(name, ()), (placed, mark))
    return found


def _in_order(
    job: Job, spec: Spec
) -> Iterator[tuple[Figure, Job | Item | PreparationStep | InspectionPoint, Preparation | None]]:
    for figure in job.figures:
        yield figure, job, None
    for item in job.items:
        for figure in item.figures:
            yield figure, item, None
    used = (spec.preparation_of(job, item) for item in job.items)
    for preparation in {one.id: one for one in used if one is not None}.values():
        for step in preparation.steps:
            for figure in step.figures:
                yield figure, step, preparation
    for point in job.inspection:
        for figure in point.figures:
            yield figure, point, None
