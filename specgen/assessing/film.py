"""Film readings of one inspection point: from rows to lots, each judged by the rule of its criterion. Called by `assessment`.

A lot is what is judged together: the readings of a measurement area, where the rows name one, else all of the point that have one
criterion. A reading in doubt is told and never mended.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass, field
from fractions import Fraction

from specgen.assessing.beneath import Beneath
from specgen.assessing.cells import CellError, figure_of, given, number_of, shows_nothing
from specgen.assessing.faults import Faults
from specgen.assessing.others import others
from specgen.assessing.records import Record, columns
from specgen.assessing.results import Lot, SpotRead
from specgen.facts.job.counting import counting, specified
from specgen.facts.job.counts import area_at, counts_of_rule, readings_in_a_spot, sampled, spots_in_an_area
from specgen.facts.job.criteria import Held, criteria_of, limits_in_force
from specgen.facts.job.inspected import places
from specgen.model.acceptance import AcceptanceRule, Criterion, Each, InspectionPoint
from specgen.model.job import Job
from specgen.model.project import Means, Policies
from specgen.model.spec import Spec
from specgen.trade.film_acceptance import Counting, Judged, Least, judge
from specgen.trade.film_area import Area, Spot
from specgen.trade.film_walk import Way, walked
from specgen.trade.known import known
from specgen.trade.verdict import Verdict
from specgen.units.locale import N_, phrase
from specgen.units.quantity import Quantity

_UNITS = ("um", "mil")
_texts = columns("item", "area", "spot", "walk", "reading", "dropped_by", "dropped_why")
_Key = tuple[str, str, str, str]
"""Item, part, area and spot."""


@dataclass(slots=True)
class _Rows:
    """What the rows of a point hold, in `unit`."""

    unit: str = ""
    decimals: int | None = None
    spots: dict[_Key, list[Fraction]] = field(default_factory=dict)
    walks: dict[tuple[str, str, str, str], list[Fraction]] = field(default_factory=dict)
    dropped: list[tuple[Record, _Key, Fraction]] = field(default_factory=list)


def lots_at(
    point: InspectionPoint,
    records: Sequence[Record],
    job: Job,
    spec: Spec,
    faults: Faults,
    beneath: Beneath | None = None,
) -> tuple[Lot, ...]:
    """The lots of a point, one at least for each film that is specified there; one without readings is not decided. What is `beneath`
    is taken off the readings of its part or spot."""
    if beneath is not None:
        records = list(_with_what_is_beneath(records, beneath, point, job, faults))
    rows = _gathered(point, records, faults, job, beneath)
    held = criteria_of(point, job, spec) or (Held((), point.criterion),)
    inspected = [item.id for item, _ in places(point, job, spec)]
    least = _least(point, job, spec)
    lots = []
    for one in held:
        items = tuple(item.id for item in one.items) or tuple(inspected)
        areas = dict.fromkeys(key[2] for key in rows.spots if key[0] in items) or {"": None}
        for area in areas:
            alone = len(held) == 1 and len(areas) == 1
            asked = least if alone else _of_one(least, area, point.criterion.rule)
            lots.append(_lot(point, one.criterion, items, area, rows, asked, job, spec))
    return tuple(lots)


def _with_what_is_beneath(
    records: Iterable[Record], beneath: Beneath, point: InspectionPoint, job: Job, faults: Faults
) -> Iterator[Record]:
    """The rows whose part, or spot, has been measured before; of each other one row is told."""
    told = set()
    kind = "DFT of the existing coating" if beneath.by_spot else "zinc thickness"
    for record in records:
        key = beneath.key(record, job)
        if key in beneath.means:
            yield record
        elif key not in told:
            told.add(key)
            what = f"no {kind} is recorded of {' '.join(text for text in key if text)}, which is to be deducted"
            faults.tell("RDG024", what, record.place("part"), point=point.id, item=key[0])


def _gathered(
    point: InspectionPoint, records: Iterable[Record], faults: Faults, job: Job, beneath: Beneath | None
) -> _Rows:
    rows = _Rows()
    seen: dict[tuple[_Key, str, str], Record] = {}
    for record in records:
        item, area, place, walk, number, dropped_by, dropped_why = _texts(record)
        film = _film(record, point.id, item, faults)
        if film is None or not _in_unit(rows, film, record, point.id, item, faults):
            continue
        value = film.number if film.unit == rows.unit else film.to(rows.unit)
        if beneath is not None:
            value -= beneath.means[beneath.key(record, job)].to(rows.unit)
        spot = place or phrase(N_("row {row}"), row=record.row)
        key = (item, record.part, area, spot)
        # the repeat of a dropped reading may keep its number
        if number and not (dropped_by or dropped_why):
            twice = seen.setdefault((key, number, walk), record)
            if twice is not record:
                what = f"reading {number} at spot {spot} of {item} stands in row {twice.row} already"
                faults.tell("RDG007", what, record.place("reading"), point=point.id, item=item)
                continue
        places_ = len(film.digits.partition(".")[2])
        rows.decimals = places_ if rows.decimals is None else min(rows.decimals, places_)
        if walk:
            rows.walks.setdefault((item, area, walk, spot), []).append(value)
        elif dropped_by or dropped_why:
            rows.dropped.append((record, key, value))
        else:
            rows.spots.setdefault(key, []).append(value)
    _judge_dropped(rows, point.id, faults)
    return rows


def _film(record: Record, point: str, item: str, faults: Faults) -> Quantity | None:
    text = record.text("value")
    if not text:
        faults.tell("RDG011", "the row has no value", record.place("value"), point=point, item=item)
        return None
    try:
        return figure_of("thickness", text, record.unit_text("value")) if not shows_nothing(text) else _nothing(text)
    except CellError as reason:
        below = _is_negative(text)
        id = "RDG005" if below or shows_nothing(text) else "RDG003"
        what = f"{text[:40]} is below zero" if below else reason.what
        faults.tell(id, what, record.place("value"), point=point, item=item)
        return None


def _nothing(text: str) -> Quantity:
    raise CellError(f"{text} is what a gauge shows that reads nothing")


def _is_negative(text: str) -> bool:
    try:
        return number_of(text)[0] < 0
    except CellError:
        return False


def _in_unit(rows: _Rows, film: Quantity, record: Record, point: str, item: str, faults: Faults) -> bool:
    stated = film.unit if film.unit in _UNITS else "um"
    if not rows.unit:
        rows.unit = stated
    if stated != rows.unit:
        what = f"{film} stands among readings in {rows.unit}"
        faults.tell("RDG006", what, record.place("value"), point=point, item=item)
        return False
    return True


def _judge_dropped(rows: _Rows, point: str, faults: Faults) -> None:
    """A reading that nobody repeated, or that nobody answers for, stays; one that stays for this is no repeat of another."""
    kept, repeated = [], set(rows.spots)
    for record, key, value in rows.dropped:
        lacking = [name for name in ("dropped_by", "dropped_why") if not given(record.text(name))]
        if key not in repeated:
            lacking.append("a repeat at that spot")
        if lacking:
            what = f"the reading {record.text('value')} is dropped without {' and '.join(lacking)}"
            faults.tell("RDG010", what, record.place("dropped_by"), point=point, item=key[0])
            rows.spots.setdefault(key, []).append(value)
        else:
            kept.append((record, key, value))
    rows.dropped = kept


def _lot(
    point: InspectionPoint,
    criterion: Criterion,
    items: tuple[str, ...],
    area: str,
    rows: _Rows,
    least: Least,
    job: Job,
    spec: Spec,
) -> Lot:
    unit = rows.unit or "um"
    policies = spec.project.policies or Policies()
    spots = tuple(
        SpotRead(_name(item, part, spot), item, part, spot, tuple(readings))
        for (item, part, of_area, spot), readings in rows.spots.items()
        if of_area == area and item in items
    )
    correction = point.gauge.correction.to(unit) if point.gauge is not None and point.gauge.correction else Fraction(0)
    read = Area(
        (Spot(spot.name, spot.readings) for spot in spots),
        unit,
        correction=correction,
        places=rows.decimals if policies.means is Means.AS_READ else None,
    )
    guard = policies.guard_band.to(unit) if policies.guard_band is not None else Fraction(0)
    held = counting(criterion)
    judged, why = judged_by(criterion, read, least, guard)
    found = known(area_at(point, job, spec))
    return Lot(
        point=point,
        name=area,
        criterion=criterion,
        items=items,
        spots=spots,
        area=read,
        counting=held,
        judged=judged,
        least=least,
        others=tuple(others(_filled(point, criterion, items, job, spec), read, found[0] if found is not None else None))
        if read.count
        else (),
        walks=_walks(criterion, rows, area, items, correction),
        dropped=tuple(record for record, key, _ in rows.dropped if key[0] in items and key[2] == area),
        why=why,
    )


def _filled(point: InspectionPoint, criterion: Criterion, items: tuple[str, ...], job: Job, spec: Spec) -> Criterion:
    """The criterion with the film specified where it states none: other rules count from what its own does not ask for."""
    for item, system in places(point, job, spec):
        if item.id in items:
            limits = limits_in_force(point, job, item, system, spec)
            left: dict[str, object] = {name: film for name, film in limits.items() if getattr(criterion, name) is None}
            return criterion.model_copy(update=left)
    return criterion


def judged_by(criterion: Criterion, read: Area, least: Least, guard: Fraction) -> tuple[Judged | None, str]:
    """The verdict of the rule; where an own rule leaves open what counts, that of readings and spots alike, if they agree."""
    held = counting(criterion)
    if held is not None:
        return judge(held, read, least, guard), ""
    limited = criterion.min is not None or criterion.max is not None
    if criterion.rule not in {AcceptanceRule.OWN, None} or not limited:
        return None, phrase(N_("the criterion lacks what its rule counts from: level, edition or nominal DFT"))
    every, spots = (judge(_inside(criterion, each), read, least, guard) for each in (Each.READING, Each.SPOT))
    if every.verdict is Verdict.CONFORMING or spots.verdict is Verdict.NOT_CONFORMING or every.verdict is spots.verdict:
        return (spots if spots.verdict is Verdict.NOT_CONFORMING else every), ""
    open_ = tuple(reason._replace(decides=False) for reason in every.reasons)
    return Judged(Verdict.NOT_DECIDED, open_, every.mean, every.below), phrase(
        N_(
            "single readings lie outside the limits and all spots within: the criterion does not say which of them counts"
        )
    )


def _inside(criterion: Criterion, each: Each) -> Counting:
    """The limits as stated, of every reading or of every spot."""
    if each is Each.SPOT:
        return Counting(spot_min=criterion.min, spot_max=criterion.max, of_spots=True)
    return Counting(single_min=criterion.min, single_max=criterion.max)


def _walks(
    criterion: Criterion, rows: _Rows, area: str, items: tuple[str, ...], correction: Fraction
) -> Mapping[str, Way]:
    """The ways of the walk; none where no minimum and no maximum says what conforms."""
    limits = specified(criterion)
    if limits == (None, None):
        return {}
    ways: dict[str, list[Fraction]] = {}
    for (item, of_area, direction, _), readings in rows.walks.items():
        if of_area == area and item in items:
            mean = sum(readings, Fraction(0)) / len(readings) - correction
            ways.setdefault(_name(item, "", direction), []).append(mean)
    unit = rows.unit or "um"
    low, high = (limit.to(unit) if limit is not None else None for limit in limits)
    return {name: walked(low, high, spots) for name, spots in ways.items()}


def _least(point: InspectionPoint, job: Job, spec: Spec) -> Least:
    """What is asked of a point as a whole: by its plan, and by its rule on the area of its items; the larger of the two."""
    plan, rule = point.readings, point.criterion.rule
    found = known(area_at(point, job, spec))
    asked = counts_of_rule(rule, found[0], plan, found[1]) if found is not None else {}
    numbers = {}
    for name in ("spots", "readings"):
        stated = [getattr(plan, name) if plan is not None else None, asked[name].number if name in asked else None]
        if name == "readings":
            stated.append(sampled(point, job, spec))
        numbers[name] = max((number for number in stated if number is not None), default=None)
    in_spot = readings_in_a_spot() if rule is AcceptanceRule.PA_2 else None
    if in_spot is None and plan is not None and plan.spots and plan.readings and plan.readings % plan.spots == 0:
        in_spot = plan.readings // plan.spots
    return Least(numbers["spots"], numbers["readings"], in_spot)


def _of_one(least: Least, area: str, rule: AcceptanceRule | None) -> Least:
    """What is asked of each of several lots: their number together is asked of the point, that of a measurement area by SSPC-PA 2."""
    spots = spots_in_an_area() if area and rule is AcceptanceRule.PA_2 else None
    return Least(spots, None, least.in_spot)


def short_of(lots: Sequence[Lot], point: InspectionPoint, job: Job, spec: Spec) -> tuple[tuple[str, int, int], ...]:
    """What all lots of a point lack together, as name, number read and number required; nothing where there is one lot, which
    tells it itself."""
    if len(lots) < 2:
        return ()
    least = _least(point, job, spec)
    read = {"spots": sum(len(lot.area.spots) for lot in lots), "readings": sum(lot.area.count for lot in lots)}
    asked = {"spots": least.spots, "readings": least.readings}
    return tuple(
        (name, read[name], number) for name, number in asked.items() if number is not None and read[name] < number
    )


def _name(item: str, part: str, spot: str) -> str:
    return " ".join(text for text in (item, part, spot) if text)
