"""The walk around an area that does not conform: spots outwards from it until its end is found. Called by whoever judges readings."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from fractions import Fraction

from specgen.standards.tables import table

_IN_A_ROW = "spots in a row that conform"


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
