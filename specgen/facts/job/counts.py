"""How many areas or readings a published table asks for on so much area. Called by the rule on enough readings."""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction
from math import ceil

from specgen.standards.citations import Basis, Citation
from specgen.standards.tables import table


@dataclass(frozen=True, slots=True)
class LeastCount:
    """A number, and on whose word."""

    number: int
    source: Citation


def least_count(name: str, area: Fraction) -> LeastCount:
    """The count that the table `name` asks for on an area in m2. The last row goes on without end, a part counting whole."""
    found = table(name)
    row = next(row for row in found.rows if not row["up_to_m2"] or area <= Fraction(row["up_to_m2"]))
    number = int(row["least"])
    if row["for_each_further_m2"]:
        further = (area - Fraction(row["over_m2"])) / Fraction(row["for_each_further_m2"])
        number += int(row["more"]) * ceil(further)
    return LeastCount(number, Citation(Basis(row["basis"]), found.document, found.clause))
