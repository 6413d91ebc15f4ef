"""What a change of unit leaves over: never hidden, and said to be by rounding only where rounding explains it. Called by `effects`.

80 um written as 3.15 mil is 80.01 um, as 3.1 mil 78.74 um. Both are what 80 um gives at the digits shown, and both are
told with their difference.
"""

from __future__ import annotations

from collections.abc import Iterator
from typing import Any

from specgen.comparison.changes import Rounding
from specgen.units.between_units import in_two_units, rounds_to
from specgen.units.quantity import Quantity, Range


def left_over(old: Any, new: Any) -> tuple[Rounding, ...]:
    """One entry for each limit whose unit changed and whose value did not stay exactly the same."""
    return tuple(_each(old, new))


def _each(old: Any, new: Any) -> Iterator[Rounding]:
    if isinstance(old, Quantity) and isinstance(new, Quantity):
        if in_two_units(old, new) and old != new:
            yield _of(old, new)
    elif isinstance(old, Range) and isinstance(new, Range):
        for side in ("low", "high"):
            yield from _each(getattr(old, side), getattr(new, side))


def _of(old: Quantity, new: Quantity) -> Rounding:
    before = old.to(new.unit)
    difference = new.to(old.unit) - old.number
    # a share of a temperature says nothing, for its zero is a convention
    percent = None if old.kind == "temperature" or old.number == 0 else difference / abs(old.number) * 100
    return Rounding(
        difference,
        old.unit,
        new.number - before,
        new.unit,
        percent,
        rounds_to(old, new),
    )
