"""Film readings that are judged together, spot by spot: their means, ends and counts.

Figures are exact; a mean is rounded only where the project says so, and then to the digits of the readings. Called by `film_acceptance`,
and by whoever hands readings to it.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Collection, Iterable, Iterator, Sequence
from fractions import Fraction
from math import ceil, floor, lcm
from typing import NamedTuple

from specgen.units.rounding import round_half_up


class Spot(NamedTuple):
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


class _Whole(NamedTuple):
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
