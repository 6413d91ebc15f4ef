"""The film of one coat by difference, spot by spot: what was read less what was read of the coats before. Called by `assessment`.

Each spot is held against the limits in the words of the criterion. A difference carries the error of both readings, so that a guard
band counts twice.
"""

from __future__ import annotations

from collections.abc import Collection, Iterable, Iterator, Mapping, Sequence
from fractions import Fraction

from specgen.assessing.results import LessBefore, Lot, Reason, SpotLess
from specgen.assessing.wording import names, reason_text
from specgen.facts.job.by_difference import ByDifference, by_difference
from specgen.facts.job.inspected import places
from specgen.model.acceptance import InspectionPoint
from specgen.model.job import Job
from specgen.model.project import Policies
from specgen.model.spec import Spec
from specgen.trade.film_acceptance import Counting, Least, judge
from specgen.trade.film_area import Area, Spot
from specgen.trade.verdict import Verdict, together
from specgen.units.locale import N_, phrase
from specgen.units.quantity import Quantity

_READINGS = 2

_Key = tuple[str, str, str, str]
"""Measurement area, item, part and spot."""


def less_before(
    point: InspectionPoint, lots: Mapping[str, Sequence[Lot]], film: Collection[str], job: Job, spec: Spec
) -> dict[str, LessBefore]:
    """By item; nothing for an item whose film is not judged by difference."""
    found = {}
    for item, system in places(point, job, spec):
        asked = by_difference(point, item, system, job, spec, film)
        if asked is not None:
            found[item.id] = _of_item(item.id, asked, lots[point.id], lots[asked.before.id], spec)
    return found


def _of_item(item: str, asked: ByDifference, total: Sequence[Lot], before: Sequence[Lot], spec: Spec) -> LessBefore:
    unit = next((lot.unit for lot in total if item in lot.items), "um")
    read = list(_means(item, total, unit))
    below = {key: value for key, _, value in _means(item, before, unit)} if read else {}
    spots, alone = [], []
    for key, name, value in read:
        if key in below:
            spots.append(SpotLess(name, value, below[key], value - below[key]))
        else:
            alone.append(name)
    policies = spec.project.policies or Policies()
    guard = policies.guard_band.to(unit) * _READINGS if policies.guard_band is not None else Fraction(0)
    held = Counting(spot_min=asked.asked.low, spot_max=asked.asked.high, of_spots=True)
    area = Area((Spot(spot.name, (spot.left,)) for spot in spots), unit)
    judged = judge(held, area, Least(), guard)
    return LessBefore(
        item=item,
        before=asked.before,
        asked=asked.asked,
        unit=unit,
        spots=tuple(spots),
        alone=tuple(alone),
        judged=judged,
        verdict=Verdict.NOT_DECIDED
        if asked.sanded
        else together([judged.verdict, *(Verdict.NOT_DECIDED for _ in alone)]),
        reasons=tuple(_reasons(asked, judged.reasons if spots else (), alone, unit)),
    )


def _means(item: str, lots: Iterable[Lot], unit: str) -> Iterator[tuple[_Key, str, Fraction]]:
    for lot in lots:
        if item not in lot.items:
            continue
        for spot, (_, mean) in zip(lot.spots, lot.area.means, strict=True):
            if spot.item == item:
                in_unit = mean if lot.unit == unit else Quantity.of("thickness", mean, lot.unit).to(unit)
                yield (lot.name, item, spot.part, spot.spot), spot.name, in_unit


def _reasons(asked: ByDifference, reasons: Iterable[Reason], alone: Sequence[str], unit: str) -> Iterator[str]:
    check = asked.before.check
    for reason in reasons:
        yield phrase(
            N_("after deducting {check} at the same spot: {reason}"), check=check, reason=reason_text(reason, unit)
        )
    if alone:
        yield phrase(N_("{check} was not read at the same spot: {spots}"), check=check, spots=names(alone))
    if asked.sanded:
        yield phrase(N_("the coat was sanded after {check}, so that nothing can be deducted"), check=check)
