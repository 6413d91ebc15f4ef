"""Whether the farthest of some results lies farther out than chance would put it: the test of Grubbs, two-sided at 5 %.

The critical values are own arithmetic, in the table `grubbs`. A result told by it is shown and kept; only a cause takes it out.
"""

from __future__ import annotations

from collections.abc import Sequence
from fractions import Fraction

from specgen.standards.tables import table

FEWEST = 5
"""Below this number the test cannot tell: of three values the farthest is always as far as it can be."""


def farthest(values: Sequence[Fraction]) -> int | None:
    """The place of the value that lies too far from the mean of the others and itself; None where none does, or too few are there."""
    number = len(values)
    if number < FEWEST:
        return None
    mean = sum(values, Fraction(0)) / number
    # squares, so that nothing is rounded
    variance = sum(((value - mean) ** 2 for value in values), Fraction(0)) / (number - 1)
    if variance == 0:
        return None
    at = max(range(number), key=lambda place: abs(values[place] - mean))
    return at if (values[at] - mean) ** 2 / variance > critical(number) ** 2 else None


def critical(number: int) -> Fraction:
    """The critical value for a number of results: that of the row at or below it, which tells sooner."""
    rows = [row for row in table("grubbs").rows if int(row["results"]) <= number]
    return Fraction(rows[-1]["two_sided_5"])
