"""An axis from one round figure to another, for every figure that draws numbers. Called by `film_plots` and `result_dots`."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class Axis:
    """`step` is the distance of two figures along it."""

    low: float
    high: float
    step: float

    @classmethod
    def over(cls, values: Sequence[float]) -> Axis:
        """Holds all values with a little room; of values from 0 up it does not begin below 0."""
        low, high = min(values), max(values)
        span = max(high - low, abs(high) * 0.05, 1e-6)
        step = next(size * 10**power for power in range(-3, 7) for size in (1, 2, 5) if span / (size * 10**power) <= 6)
        begin = (low - 0.05 * span) // step * step
        return cls(max(0.0, begin) if low >= 0 else begin, -(-(high + 0.05 * span) // step) * step, step)

    def share(self, value: float) -> float:
        """Where a value lies along it, from 0 to 1."""
        return (value - self.low) / (self.high - self.low)

    def ticks(self) -> Iterator[float]:
        for number in range(round((self.high - self.low) / self.step) + 1):
            yield self.low + number * self.step

    def figures(self) -> list[str]:
        """The figures of the ticks, all to as many places as the one that needs most: `1.0`, `1.1`."""
        texts = [figure(value) for value in self.ticks()]
        places = max(len(text.partition(".")[2]) for text in texts)
        return [f"{value:.{places}f}" for value in self.ticks()]


def figure(value: float) -> str:
    """`0.6`, `12`: a figure of an axis."""
    return f"{value:.4f}".rstrip("0").rstrip(".") or "0"
