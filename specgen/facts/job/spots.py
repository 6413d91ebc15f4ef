"""Where film is read at a point: spots and readings planned for the job, and the spots of each part, by name.

Called by job cards and record sheets. Parts with marks on the author's sketch have a spot at each; the others share what is left
evenly. A counting rule that asks for more than the plan goes before it.
"""

from __future__ import annotations

from dataclasses import dataclass
from math import ceil

from specgen.facts.job.counts import area_at, counts_of_rule
from specgen.facts.job.inspected import places
from specgen.facts.job.zinc_beneath import measures_zinc
from specgen.model.acceptance import InspectionPoint, SampledUnit
from specgen.model.job import Item, Job
from specgen.model.spec import Spec
from specgen.trade.known import NotKnown

# SSPC-PA 2 and ISO 19840 count spots of three readings or single ones; where the plan states none, three boxes and ten spots.
_READINGS, _SPOTS = 3, 10


@dataclass(frozen=True, slots=True)
class PartSpots:
    """The spots of one part, and how many readings each has. Parts are counted from 1."""

    item: Item
    part: int
    spots: tuple[str, ...]
    readings: int


def planned(point: InspectionPoint, job: Job, spec: Spec) -> tuple[int, int, bool]:
    """Spots, readings at each, and whether the plan states them; of zinc that is deducted later the mean of each part."""
    plan = point.readings
    if measures_zinc(point, job):
        return sum(item.count for item, _ in places(point, job, spec)), 1, True
    if plan is not None and plan.spots:
        return plan.spots, ceil(plan.readings / plan.spots) if plan.readings else _READINGS, True
    if plan is not None and plan.readings:
        return plan.readings, 1, True
    if point.sampling is not None and point.sampling.count is not None:
        count = point.sampling.count.high or point.sampling.count.low
        parts = sum(item.count for item, _ in places(point, job, spec))
        return max(1, count * (parts if point.sampling.per is SampledUnit.PART else 1)), 1, True
    return _SPOTS, _READINGS, False


def spots_of_parts(point: InspectionPoint, job: Job, spec: Spec) -> tuple[PartSpots, ...]:
    """The spots of every part a point looks at, in the order of the job."""
    spots, readings, _ = planned(point, job, spec)
    spots = max(spots, _by_rule(point, job, spec, readings))
    parts = [(item, part) for item, _ in places(point, job, spec) for part in range(1, item.count + 1)]
    marked = {item.id: _letters(point, item) for item, _ in parts}
    unmarked = [item for item, _ in parts if not marked[item.id]]
    left = max(0, spots - sum(len(marked[item.id]) for item, _ in parts))
    # where every part is marked, they share what the marks leave
    more = ceil(left / len(unmarked or parts)) if parts else 0
    return tuple(
        PartSpots(item, part, (*marked[item.id], *_numbers(0 if marked[item.id] and unmarked else more)), readings)
        for item, part in parts
    )


def _by_rule(point: InspectionPoint, job: Job, spec: Spec, per_spot: int) -> int:
    area = area_at(point, job, spec)
    if isinstance(area, NotKnown):
        return 0
    asked = counts_of_rule(point.criterion.rule, area[0], point.readings, area[1])
    if "spots" in asked:
        return asked["spots"].number
    return ceil(asked["readings"].number / per_spot) if "readings" in asked else 0


def _letters(point: InspectionPoint, item: Item) -> tuple[str, ...]:
    return tuple(
        mark.letter for figure in item.figures for mark in figure.marks if f"{figure.id}/{mark.id}" in point.marked
    )


def _numbers(many: int) -> tuple[str, ...]:
    return tuple(str(number) for number in range(1, many + 1))
