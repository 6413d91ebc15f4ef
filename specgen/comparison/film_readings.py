"""What a counting rule makes of a set of film readings, and sets that one rule accepts and another refuses. Called by `criteria`.

A set is the readings of one area: five spots of three under SSPC-PA 2, and as many as ISO 19840 asks for over 3 to 10 m2, so that
every rule can judge it. Thickness is in micrometres throughout, exact.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, fields
from fractions import Fraction
from itertools import product
from math import ceil, floor

from specgen.facts.job.counting import counting
from specgen.model.acceptance import AcceptanceRule, InspectionPoint
from specgen.units.quantity import Quantity

_SPOT = 3
"""Gauge readings of a spot, as table sspc_pa_2_readings has it."""
READINGS = 15
_LOW = range(7)
"""How many readings of a set are of its first value; the others are of its second."""


@dataclass(frozen=True, slots=True)
class Judge:
    """What a criterion asks of readings, each after `correction` is taken off; None where it does not ask.

    Of all readings `below_most` may lie below `counted_from`, as a share, and fewer than that where `fewer`.
    """

    correction: Fraction
    least: Fraction | None = None
    most: Fraction | None = None
    mean_least: Fraction | None = None
    mean_most: Fraction | None = None
    spot_least: Fraction | None = None
    spot_most: Fraction | None = None
    counted_from: Fraction | None = None
    below_most: Fraction = Fraction(1)
    fewer: bool = False

    def accepts(self, gauge: Sequence[Fraction]) -> bool:
        """True where the readings of one area pass; they stand spot by spot."""
        read = [reading - self.correction for reading in gauge]
        spots = [
            sum(read[at : at + _SPOT], Fraction(0)) / len(read[at : at + _SPOT]) for at in range(0, len(read), _SPOT)
        ]
        mean = sum(read, Fraction(0)) / len(read)
        return (
            all(_inside(reading, self.least, self.most) for reading in read)
            and all(_inside(spot, self.spot_least, self.spot_most) for spot in spots)
            and _inside(mean, self.mean_least, self.mean_most)
            and self._few_enough(read)
        )

    def _few_enough(self, read: Sequence[Fraction]) -> bool:
        if self.counted_from is None:
            return True
        share = Fraction(sum(reading < self.counted_from for reading in read), len(read))
        return share < self.below_most or (not self.fewer and share == self.below_most)

    def limits(self) -> Iterator[Fraction]:
        """Every thickness at which the verdict may turn, as a gauge shows it."""
        for limit in fields(self):
            value = getattr(self, limit.name)
            if limit.name not in {"correction", "below_most", "fewer"} and value is not None:
                yield value + self.correction


def judge_of(point: InspectionPoint) -> Judge | None:
    """The judge of a point; None where its words decide, or it leaves out what its rule counts from."""
    criterion = point.criterion
    if criterion.rule is AcceptanceRule.PA_2 and (criterion.min is None or criterion.max is None):
        return None
    if criterion.rule is AcceptanceRule.ISO_19840 and criterion.low_readings is None:
        return None
    held = counting(criterion)
    if held is None:
        return None
    correction = _um(point.gauge.correction) if point.gauge is not None else None
    return Judge(
        correction or Fraction(0),
        least=_um(held.single_min),
        most=_um(held.single_max),
        mean_least=_um(held.mean_min),
        mean_most=_um(held.mean_max),
        spot_least=_um(held.spot_min),
        spot_most=_um(held.spot_max),
        counted_from=_um(held.counted_from),
        below_most=held.below_most,
        fewer=held.fewer,
    )


def told_apart(accepting: Judge, refusing: Judge, unit: str) -> tuple[tuple[int, Fraction], ...] | None:
    """A set that the first judge accepts and the second refuses, as counts and values in `unit`; None where none was found.

    Tried are all sets of two values next to the limits of either, in steps a gauge shows: 1 um or 0.1 mil.
    """
    step = Fraction(1) if unit == "um" else Quantity.of("thickness", Fraction(1, 10), unit).to("um")
    values = _next_to({*accepting.limits(), *refusing.limits()}, step)
    for low, (first, second) in product(_LOW, product(values, values)):
        read = [first] * low + [second] * (READINGS - low)
        if first != second and accepting.accepts(read) and not refusing.accepts(read):
            counts = ((low, first), (READINGS - low, second))
            return tuple((count, Quantity.of("thickness", value, "um").to(unit)) for count, value in counts if count)
    return None


def _next_to(limits: set[Fraction], step: Fraction) -> list[Fraction]:
    found = {
        near * step
        for at in limits
        for near in (floor(at / step) - 1, floor(at / step), ceil(at / step), ceil(at / step) + 1)
    }
    return sorted(value for value in found if value > 0)


def _um(value: Quantity | None) -> Fraction | None:
    return value.to("um") if value is not None else None


def _inside(value: Fraction, least: Fraction | None, most: Fraction | None) -> bool:
    return (least is None or value >= least) and (most is None or value <= most)
