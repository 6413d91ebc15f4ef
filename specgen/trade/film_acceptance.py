"""Film readings held against what a counting rule accepts: conforming, not conforming or not decided, and for which reasons.

No reading is ever left out here: whoever drops one repeats it and says why. Figures are exact; a mean is rounded only where the
project says so, and then to the digits of the readings. With a guard band a figure nearer to a limit than that is not decided.
Called by `facts`, by the comparison, which tries sets of readings, and by whoever judges the readings of a job.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Collection, Iterable, Iterator, Sequence
from dataclasses import dataclass, fields, replace
from enum import StrEnum
from fractions import Fraction
from math import ceil, floor, lcm

from specgen.standards.citations import LOGIC, Basis
from specgen.standards.tables import table
from specgen.trade.verdict import Verdict, together
from specgen.trade.working import Input, Working, work
from specgen.units.locale import N_
from specgen.units.quantity import Quantity
from specgen.units.rounding import round_half_up

_PERCENT = N_("100: shares are in percent")
_PLACES = {"um": 1, "mil": 2}
_IN_A_ROW = "spots in a row that conform"


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


@dataclass(frozen=True, slots=True)
class Spot:
    """Gauge readings at one place, in the unit of their area."""

    name: str
    readings: tuple[Fraction, ...]

    @property
    def mean(self) -> Fraction:
        return sum(self.readings, Fraction(0)) / len(self.readings)


class Area:
    """The readings that are judged together, in `unit`: a correction taken off each, means rounded to `places` where that is asked.

    What every rule asks of them is worked out once, over whole numbers with one divisor: hundreds of thousands of fractions take
    their time. A spot without readings is left out.
    """

    def __init__(
        self, spots: Iterable[Spot], unit: str, *, correction: Fraction = Fraction(0), places: int | None = None
    ) -> None:
        read = [spot for spot in spots if spot.readings]
        if correction:
            read = [Spot(spot.name, tuple(value - correction for value in spot.readings)) for spot in read]
        self.spots: tuple[Spot, ...] = tuple(read)
        self.unit = unit
        self._places = places
        self._readings = _Whole.of([value for spot in read for value in spot.readings])
        self.values = Counter(
            {Fraction(number, self._readings.divisor): n for number, n in Counter(self._readings.numbers).items()}
        )
        self.count = len(self._readings.numbers)
        self._means = _Whole.of(list(self._mean_of_each()))
        self._lowest, self._highest = self._ends()

    def only(self, spots: Collection[str]) -> Area:
        """The spots of these names by themselves."""
        return Area((spot for spot in self.spots if spot.name in spots), self.unit, places=self._places)

    @property
    def means(self) -> tuple[tuple[str, Fraction], ...]:
        """Name and mean of every spot."""
        by = self._means.divisor
        return tuple(
            (spot.name, Fraction(number, by)) for spot, number in zip(self.spots, self._means.numbers, strict=True)
        )

    @property
    def lowest_mean(self) -> Fraction:
        return Fraction(min(self._means.numbers), self._means.divisor)

    @property
    def highest_mean(self) -> Fraction:
        return Fraction(max(self._means.numbers), self._means.divisor)

    def _mean_of_each(self) -> Iterator[Fraction]:
        at, by = 0, self._readings.divisor
        for spot in self.spots:
            size = len(spot.readings)
            mean = Fraction(sum(self._readings.numbers[at : at + size]), by * size)
            at += size
            yield self._rounded(mean)

    def _ends(self) -> tuple[list[int], list[int]]:
        """The lowest and the highest reading of every spot."""
        lowest, highest, at = [], [], 0
        for spot in self.spots:
            numbers = self._readings.numbers[at : at + len(spot.readings)]
            at += len(spot.readings)
            lowest.append(min(numbers))
            highest.append(max(numbers))
        return lowest, highest

    def _rounded(self, value: Fraction) -> Fraction:
        return value if self._places is None else Fraction(round_half_up(value, self._places))

    def total(self, *, of_spots: bool) -> Fraction:
        return (self._means if of_spots else self._readings).total

    def mean(self, *, of_spots: bool) -> Fraction:
        """Raises ZeroDivisionError where nothing is read."""
        return self._rounded(self.total(of_spots=of_spots) / (len(self.spots) if of_spots else self.count))

    def below(self, film: Fraction) -> int:
        """How many readings lie below a film."""
        return sum(count for value, count in self.values.items() if value < film)

    def ends(self, spots: Collection[str]) -> tuple[Fraction, Fraction]:
        """The lowest and the highest reading at the spots of these names. Raises ValueError for none of ours."""
        chosen = [at for at, spot in enumerate(self.spots) if spot.name in spots]
        by = self._readings.divisor
        return Fraction(min(self._lowest[at] for at in chosen), by), Fraction(
            max(self._highest[at] for at in chosen), by
        )

    def with_reading(self, *, below: Fraction | None = None, above: Fraction | None = None) -> tuple[str, ...]:
        """The spots with a reading below, or above, a film."""
        whole = self._readings
        if below is not None:
            return self._named(whole.is_below(below, self._lowest))
        return self._named(whole.is_above(above, self._highest)) if above is not None else ()

    def with_mean(self, *, below: Fraction | None = None, above: Fraction | None = None) -> tuple[str, ...]:
        """The spots whose mean is below, or above, a film."""
        whole = self._means
        if below is not None:
            return self._named(whole.is_below(below, whole.numbers))
        return self._named(whole.is_above(above, whole.numbers)) if above is not None else ()

    def _named(self, chosen: Iterable[bool]) -> tuple[str, ...]:
        return tuple(spot.name for spot, is_so in zip(self.spots, chosen, strict=True) if is_so)


@dataclass(frozen=True, slots=True)
class _Whole:
    """Fractions as whole numbers over one divisor."""

    numbers: list[int]
    divisor: int

    @classmethod
    def of(cls, values: Sequence[Fraction]) -> _Whole:
        divisor = lcm(*{value.denominator for value in values})
        return cls([value.numerator * (divisor // value.denominator) for value in values], divisor)

    @property
    def total(self) -> Fraction:
        return Fraction(sum(self.numbers), self.divisor)

    def is_below(self, limit: Fraction, numbers: Iterable[int]) -> Iterator[bool]:
        least = ceil(limit * self.divisor)
        return (number < least for number in numbers)

    def is_above(self, limit: Fraction, numbers: Iterable[int]) -> Iterator[bool]:
        most = floor(limit * self.divisor)
        return (number > most for number in numbers)


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


@dataclass(frozen=True, slots=True)
class Reason:
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


@dataclass(frozen=True, slots=True)
class Least:
    """How many readings there have to be: spots, readings in all, and readings in each spot; None where nothing is asked."""

    spots: int | None = None
    readings: int | None = None
    in_spot: int | None = None


@dataclass(frozen=True, slots=True)
class Judged:
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
                replace(one, decides=False) for one in _at(found, area, [name for name in found.at if name in short])
            )
        else:
            yield replace(found, decides=False)


def _guarded(held: Counting, area: Area, guard: Fraction) -> Iterator[Reason]:
    """The faults at the limits as stated that no guard band turns, at their spots; then what is near, at the spots left."""
    stated = {found.fault: found for found in _faults(held, area)}
    sure = {found.fault: found for found in _faults(_moved(held, area.unit, -guard), area)}
    for found in _faults(_moved(held, area.unit, guard), area):
        near = replace(found, limit=_stated(found, guard), decides=False, near=True)
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
    yield replace(found, at=tuple(spots), found=farthest)


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


@dataclass(frozen=True, slots=True)
class Way:
    """One direction of the walk around an area that does not conform: how many spots belong to it, and whether its end is found."""

    spots: int
    closed: bool


def walked(least: Fraction | None, most: Fraction | None, spots: Sequence[Fraction]) -> Way:
    """Spots outwards from a non-conforming area, nearest first, until so many in a row conform as the table of the walk asks for.

    Each is held against the plain limits, without the allowance a spot has elsewhere. Source: SSPC-PA 2, non-conforming areas.
    """
    asked = int(table("sspc_pa_2_walk").row("what", _IN_A_ROW)["value"])
    in_a_row = 0
    for number, spot in enumerate(spots, 1):
        conforms = (least is None or spot >= least) and (most is None or spot <= most)
        in_a_row = in_a_row + 1 if conforms else 0
        if in_a_row == asked:
            return Way(number - asked, closed=True)
    return Way(len(spots) - in_a_row, closed=False)
