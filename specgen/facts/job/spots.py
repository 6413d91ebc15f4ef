"""Where film is read at a point: spots and readings planned for the job, and the spots of each part, by name.

Called by job cards and record sheets. Parts with marks on the author's sketch have a spot at each; the others have what the words of
the point say of one part, or share what is left evenly. A counting rule that asks for more than the plan goes before it.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from math import ceil

from specgen.facts.job.counts import area_at, counts_of_rule
from specgen.facts.job.inspected import film_points, places
from specgen.facts.job.spots_in_words import readings_in_words, same_spots, spots_in_words
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
    items = [item for item, _ in places(point, job, spec)]
    readings = readings_in_words(point) or _READINGS
    said = spots_in_words(point, items, None)
    if said is None and same_spots(point) and (before := _before(point, items, job, spec)) is not None:
        return planned(before, job, spec)
    if said is not None:
        return sum(said.of[item.id] * item.count for item in items), readings, said.certain
    return _SPOTS, readings, False


def spots_of_parts(point: InspectionPoint, job: Job, spec: Spec) -> tuple[PartSpots, ...]:
    """The spots of every part a point looks at, in the order of the job."""
    spots, readings, stated = planned(point, job, spec)
    own, items = point, [item for item, _ in places(point, job, spec)]
    while same_spots(own) and (before := _before(own, items, job, spec)) is not None:
        own = before
    spots = max(spots, _by_rule(point, job, spec, readings))
    parts = [(item, part) for item, _ in places(point, job, spec) for part in range(1, item.count + 1)]
    marked = {item.id: _letters(point, item) for item, _ in parts}
    unmarked = [item for item, _ in parts if not marked[item.id]]
    left = max(0, spots - sum(len(marked[item.id]) for item, _ in parts))
    # where every part is marked, they share what the marks leave
    sharing = len(unmarked or parts)
    shared = iter(_spread(left if stated else sharing * ceil(left / max(1, sharing)), sharing))
    said = spots_in_words(own, [item for item in items if not marked[item.id]], left)
    found = []
    for item, part in parts:
        more = 0 if marked[item.id] and unmarked else next(shared)
        if said is not None and not marked[item.id]:
            more = said.of[item.id]
        found.append(PartSpots(item, part, (*marked[item.id], *_numbers(more)), readings))
    return tuple(found)


def _before(point: InspectionPoint, items: Sequence[Item], job: Job, spec: Spec) -> InspectionPoint | None:
    """The last point before this one at which the film of the same items is read."""
    own = {item.id for item in items}
    earlier = list(film_points(job))
    earlier = earlier[: earlier.index(point)] if point in earlier else []
    same = (one for one in reversed(earlier) if {item.id for item, _ in places(one, job, spec)} == own)
    return next(same, None)


def _spread(spots: int, parts: int) -> list[int]:
    """As many on each part as make up the spots; at least one, so that whoever measures may choose the part."""
    return [max(1 if spots else 0, spots * (at + 1) // parts - spots * at // parts) for at in range(parts)]


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
