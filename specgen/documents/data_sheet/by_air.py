"""Times of a product with the temperatures of the air side by side. Called by `use` for drying and for the intervals.

A time that is not stated for a temperature says so; more temperatures than stand side by side have a line each instead.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from fractions import Fraction

from specgen.documents.parts.tables import Column, TableView, table_view
from specgen.documents.parts.wording import Words
from specgen.units.quantity import Quantity, Range, as_range

_MOST = 5


@dataclass(frozen=True, slots=True, kw_only=True)
class Timed:
    """One time: what it is of, and at which air."""

    name: str
    air: Quantity | Range
    time: str


def by_air(caption: str, head: str, stated: Sequence[Timed], words: Words) -> TableView:
    """A row for each name, a column for each temperature, the coldest first."""
    airs = sorted(dict.fromkeys(entry.air for entry in stated), key=_coldest)
    first = Column(head, "w-35")
    if len(airs) > _MOST:
        columns = (first, Column(words("Air temperature"), "w-25"), Column(words("Time")))
        return table_view(caption, columns, [(one.name, words.condition(one.air), one.time) for one in stated])
    found: dict[str, dict[Quantity | Range, list[str]]] = {}
    for entry in stated:
        found.setdefault(entry.name, {}).setdefault(entry.air, []).append(entry.time)
    rows = [
        (name, *("; ".join(times[air]) if air in times else words("not stated") for air in airs))
        for name, times in found.items()
    ]
    heads = (Column(words("Air {}").format(words.condition(air))) for air in airs)
    return table_view(caption, (first, *heads), rows)


def _coldest(air: Quantity | Range) -> Fraction:
    ends = as_range(air)
    found = ends.low if ends.low is not None else ends.high
    return found.base if found is not None else Fraction(0)
