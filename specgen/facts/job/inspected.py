"""Which points of a job read film, and which items a point looks at. Called by rules, the method statement and the job card."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence

from specgen.facts.memo import gathered
from specgen.model.acceptance import InspectionPoint
from specgen.model.job import Item, Job
from specgen.model.spec import Spec
from specgen.model.system import System


def film_points(job: Job) -> Iterator[InspectionPoint]:
    """The points at which film is read: those with a gauge, a counting rule, a limit of film or one as specified."""
    for point in job.inspection:
        criterion = point.criterion
        figures = (criterion.rule, criterion.min, criterion.nominal, criterion.max)
        if point.gauge is not None or criterion.as_specified or any(figure is not None for figure in figures):
            yield point


def numbers_of(job: Job) -> Mapping[str, str]:
    """The number of each point in the inspection and test plan, by its id: `1` for the first, in the order of the job."""
    return {point.id: str(number) for number, point in enumerate(job.inspection, 1)}


def points_on(items: Sequence[Item], job: Job, spec: Spec) -> tuple[InspectionPoint, ...]:
    """The points of a job that look at one of the items, in their order."""
    mine = {item.id for item in items}
    return tuple(point for point in job.inspection if any(item.id in mine for item, _ in places(point, job, spec)))


@gathered
def places(point: InspectionPoint, job: Job, spec: Spec) -> Iterator[tuple[Item, System]]:
    """Each item with its system: those the point names, or all of the job; of these, those with the layer it follows."""
    for item in job.items:
        system = spec.system_of(job, item)
        named = not point.items or item.id in point.items
        if (
            system is not None
            and named
            and (point.after is None or any(layer.id == point.after for layer in system.layers))
        ):
            yield item, system


def systems_at(point: InspectionPoint, job: Job, spec: Spec) -> tuple[System, ...]:
    """The systems of the items a point looks at, each once."""
    return tuple({system.id: system for _, system in places(point, job, spec)}.values())
