"""Film readings held against what a counting rule accepts: conforming, not conforming or not decided, and for which reasons.

No reading is ever left out here: whoever drops one repeats it and says why. With a guard band a figure nearer to a limit than that is
not decided.
Called by `facts`, by the comparison, which tries sets of readings, and by whoever judges the readings of a job.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, fields, replace
from enum import StrEnum
from fractions import Fraction
from typing import NamedTuple

from specgen.standards.citations import LOGIC, Basis
from specgen.trade.film_area import Area
from specgen.trade.verdict import Verdict, together
from specgen.trade.working import Input, Working, work
from specgen.units.locale import N_
from specgen.units.quantity import Quantity

_PERCENT = N_("100: shares are in percent")
_PLACES = {"um": 1, "mil": 2}


@dataclass(frozen=True, slots=True, kw_only=True)
class Counting:
    """What is accepted; None where the rule does not ask. Of all readings `below_most` may lie below `counted_from`, as a share,
    and fewer than that where `fewer`.

    `of_spots`: the mean is that of the spots, each the mean of its readings; else that of all readings. `tripled`: no maximum is
    stated, and the rule takes a multiple of the nominal film. `unconfirmed` is the basis of a figure that is not confirmed.
    """

    single_min: Quantity | None = None
    single_max: Quantity | None = None
    spot_min: Quantity | None = None
    spot_max: Quantity | None = None
    mean_min: Quantity | None = None
    mean_max: Quantity | None = None
    counted_from: Quantity | None = None
    below_most: Fraction = Fraction(1)
    fewer: bool = False
    of_spots: bool = False
    tripled: bool = False
    unconfirmed: Basis | None = None

    def limits(self) -> Iterator[Quantity]:
        """Every film at which the verdict may turn."""
        for limit in fields(self):
            if isinstance(value := getattr(self, limit.name), Quantity):
                yield value


class Fault(StrEnum):
    """What keeps readings from passing."""

    READING_LOW = "reading-low"
    READING_HIGH = "reading-high"
    SPOT_LOW = "spot-low"
    SPOT_HIGH = "spot-high"
    MEAN_LOW = "mean-low"
    MEAN_HIGH = "mean-high"
    MANY_BELOW = "many-below"
    NOTHING_READ = "nothing-read"
    FEW_SPOTS = "few-spots"
    FEW_READINGS = "few-readings"
    FEW_IN_SPOT = "few-in-spot"


class Reason(NamedTuple):
    """One fault: what was `found` and the `limit` it is held against, in the unit of the area, as counts or as a share.

    `at` are the spots it is found at. Where it does not `decide`, more readings, or a gauge with less uncertainty, could still
    turn it; `near`: the figure lies within the guard band of the limit; `fewer`: the limit itself is too many already.
    """

    fault: Fault
    found: Fraction
    limit: Fraction
    at: tuple[str, ...] = ()
    decides: bool = True
    near: bool = False
    fewer: bool = False


class Least(NamedTuple):
    """How many readings there have to be: spots, readings in all, and readings in each spot; None where nothing is asked."""

    spots: int | None = None
    readings: int | None = None
    in_spot: int | None = None


class Judged(NamedTuple):
    """A verdict and every reason against passing; the mean that counts and the share below what is counted from, where read."""

    verdict: Verdict
    reasons: tuple[Reason, ...]
    mean: Working | None = None
    below: Working | None = None


def judge(held: Counting, area: Area, least: Least | None = None, guard: Fraction = Fraction(0)) -> Judged:
    """The readings of one area under a rule.

    Too few readings are never a pass. What more readings could still turn (a mean, a share, a spot that lacks readings) decides
    nothing while some are missing; a single reading outside its limits does.
    """
    if not area.count:
        return Judged(Verdict.NOT_DECIDED, (Reason(Fault.NOTHING_READ, Fraction(0), Fraction(1), decides=False),))
    missing = tuple(_missing(area, least or Least()))
    reasons = (*_reasons(held, area, missing, guard), *missing)
    mean = _mean(area, of_spots=held.of_spots)
    below = _below(area, held.counted_from.to(area.unit)) if held.counted_from is not None else None
    verdicts = (Verdict.NOT_CONFORMING if reason.decides else Verdict.NOT_DECIDED for reason in reasons)
    return Judged(together(verdicts) if reasons else Verdict.CONFORMING, reasons, mean, below)


def accepts(held: Counting, area: Area) -> bool:
    """True where every reading, spot and mean passes; nothing is said of their number."""
    return bool(area.count) and not any(_faults(held, area))


def _reasons(held: Counting, area: Area, missing: tuple[Reason, ...], guard: Fraction) -> Iterator[Reason]:
    short = {name for reason in missing if reason.fault is Fault.FEW_IN_SPOT for name in reason.at}
    for found in _guarded(held, area, guard) if guard else _faults(held, area):
        if found.near or not missing or found.fault in {Fault.READING_LOW, Fault.READING_HIGH}:
            yield found
        elif found.fault in {Fault.SPOT_LOW, Fault.SPOT_HIGH}:
            yield from _at(found, area, [name for name in found.at if name not in short])
            yield from (
                one._replace(decides=False) for one in _at(found, area, [name for name in found.at if name in short])
            )
        else:
            yield found._replace(decides=False)


def _guarded(held: Counting, area: Area, guard: Fraction) -> Iterator[Reason]:
    """The faults at the limits as stated that no guard band turns, at their spots; then what is near, at the spots left."""
    stated = {found.fault: found for found in _faults(held, area)}
    sure = {found.fault: found for found in _faults(_moved(held, area.unit, -guard), area)}
    for found in _faults(_moved(held, area.unit, guard), area):
        near = found._replace(limit=_stated(found, guard), decides=False, near=True)
        certain = sure.get(found.fault)
        if certain is None:
            yield near
            continue
        if found.fault not in AT_A_SPOT:
            yield stated[found.fault]
            continue
        out = set(certain.at)
        yield from _at(stated[found.fault], area, certain.at)
        yield from _at(near, area, [name for name in found.at if name not in out])


AT_A_SPOT = frozenset({Fault.READING_LOW, Fault.READING_HIGH, Fault.SPOT_LOW, Fault.SPOT_HIGH})
"""Found spot by spot; the others are of the whole area."""


def _at(found: Reason, area: Area, spots: Sequence[str]) -> Iterator[Reason]:
    """The reason as it is at these spots alone, with what lies farthest out there; nothing for no spot."""
    if not spots:
        return
    chosen = frozenset(spots)
    if found.fault in {Fault.READING_LOW, Fault.READING_HIGH}:
        lowest, highest = area.ends(chosen)
    else:
        means = [mean for name, mean in area.means if name in chosen]
        lowest, highest = min(means), max(means)
    farthest = lowest if found.fault in {Fault.READING_LOW, Fault.SPOT_LOW} else highest
    yield found._replace(at=tuple(spots), found=farthest)


def _stated(found: Reason, guard: Fraction) -> Fraction:
    """The limit itself, of a reason found with limits drawn together."""
    if found.fault is Fault.MANY_BELOW:
        return found.limit
    low = found.fault in {Fault.READING_LOW, Fault.SPOT_LOW, Fault.MEAN_LOW}
    return found.limit - guard if low else found.limit + guard


def _moved(held: Counting, unit: str, inwards: Fraction) -> Counting:
    """The limits drawn together by so much, or apart where it is negative."""

    def shifted(film: Quantity | None, by: Fraction) -> Quantity | None:
        return None if film is None else Quantity.of(film.kind, film.to(unit) + by, unit)

    return replace(
        held,
        single_min=shifted(held.single_min, inwards),
        single_max=shifted(held.single_max, -inwards),
        spot_min=shifted(held.spot_min, inwards),
        spot_max=shifted(held.spot_max, -inwards),
        mean_min=shifted(held.mean_min, inwards),
        mean_max=shifted(held.mean_max, -inwards),
        counted_from=shifted(held.counted_from, inwards),
    )


def _faults(held: Counting, area: Area) -> Iterator[Reason]:
    unit = area.unit
    if held.single_min is not None and min(area.values) < (limit := held.single_min.to(unit)):
        yield Reason(Fault.READING_LOW, min(area.values), limit, area.with_reading(below=limit))
    if held.single_max is not None and max(area.values) > (limit := held.single_max.to(unit)):
        yield Reason(Fault.READING_HIGH, max(area.values), limit, area.with_reading(above=limit))
    if held.spot_min is not None and (low := area.with_mean(below=(limit := held.spot_min.to(unit)))):
        yield Reason(Fault.SPOT_LOW, area.lowest_mean, limit, low)
    if held.spot_max is not None and (high := area.with_mean(above=(limit := held.spot_max.to(unit)))):
        yield Reason(Fault.SPOT_HIGH, area.highest_mean, limit, high)
    if held.mean_min is not None or held.mean_max is not None:
        mean = area.mean(of_spots=held.of_spots)
        if held.mean_min is not None and mean < (limit := held.mean_min.to(unit)):
            yield Reason(Fault.MEAN_LOW, mean, limit)
        if held.mean_max is not None and mean > (limit := held.mean_max.to(unit)):
            yield Reason(Fault.MEAN_HIGH, mean, limit)
    if held.counted_from is not None:
        film = held.counted_from.to(unit)
        share = Fraction(area.below(film), area.count)
        if share > held.below_most or (held.fewer and share == held.below_most):
            at = area.with_reading(below=film)
            yield Reason(Fault.MANY_BELOW, share, held.below_most, at, fewer=held.fewer)


def _missing(area: Area, least: Least) -> Iterator[Reason]:
    if least.spots is not None and len(area.spots) < least.spots:
        yield Reason(Fault.FEW_SPOTS, Fraction(len(area.spots)), Fraction(least.spots), decides=False)
    if least.in_spot is not None:
        short = [(len(spot.readings), spot.name) for spot in area.spots if len(spot.readings) < least.in_spot]
        if short:
            names = tuple(name for _, name in short)
            yield Reason(Fault.FEW_IN_SPOT, Fraction(min(short)[0]), Fraction(least.in_spot), names, decides=False)
    if least.readings is not None and area.count < least.readings:
        yield Reason(Fault.FEW_READINGS, Fraction(area.count), Fraction(least.readings), decides=False)


def _mean(area: Area, *, of_spots: bool) -> Working:
    count = len(area.spots) if of_spots else area.count
    inputs = (
        Input(
            "S",
            N_("sum of the spot measurements") if of_spots else N_("sum of the readings"),
            Quantity.of("thickness", area.total(of_spots=of_spots), area.unit),
            area.unit,
            "",
        ),
        Input("n", N_("number of spots") if of_spots else N_("number of readings"), Fraction(count), "", ""),
    )
    name = N_("mean of the spots") if of_spots else N_("mean of the readings")
    places = _PLACES[area.unit]
    return work("film.mean", name, "S / n", inputs, kind="thickness", unit=area.unit, places=places, source=LOGIC)


def _below(area: Area, film: Fraction) -> Working:
    inputs = (
        Input("b", N_("readings below nominal"), Fraction(area.below(film)), "", ""),
        Input("n", N_("number of readings"), Fraction(area.count), "", ""),
    )
    name, formula = N_("readings below nominal"), "b * 100 / n"
    return work("film.below", name, formula, inputs, kind="share", unit="%", places=1, source=LOGIC, note=_PERCENT)
