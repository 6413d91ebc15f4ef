"""What a counting rule makes of a set of film readings, and sets that one rule accepts and another refuses. Called by `criteria`.

A set is the readings of one area: five spots of three under SSPC-PA 2, and as many as ISO 19840 asks for over 3 to 10 m2, so that
every rule can judge it. Thickness is in micrometres throughout, exact.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from fractions import Fraction
from itertools import product
from math import ceil, floor

from specgen.facts.job.counting import counting
from specgen.model.acceptance import AcceptanceRule, InspectionPoint
from specgen.trade.film_acceptance import Counting, accepts
from specgen.trade.film_area import Area, Spot
from specgen.units.quantity import Quantity

_SPOT = 3
"""Gauge readings of a spot, as table sspc_pa_2_readings has it."""
READINGS = 15
_LOW = range(7)
"""How many readings of a set are of its first value; the others are of its second."""


@dataclass(frozen=True, slots=True)
class Judge:
    """What a criterion asks of readings, each after `correction` is taken off."""

    held: Counting
    correction: Fraction

    def accepts(self, gauge: Sequence[Fraction]) -> bool:
        """True where the readings of one area pass; they stand spot by spot."""
        spots = [Spot("", tuple(gauge[at : at + _SPOT])) for at in range(0, len(gauge), _SPOT)]
        return accepts(self.held, Area(spots, "um", correction=self.correction))

    def limits(self) -> Iterator[Fraction]:
        """Every thickness at which the verdict may turn, as a gauge shows it."""
        return (limit.to("um") + self.correction for limit in self.held.limits())


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
    correction = point.gauge.correction if point.gauge is not None else None
    return Judge(held, correction.to("um") if correction is not None else Fraction(0))


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
