"""Surface profile as a comparator gives it: a grade, which is a range between two of its segments. Called by the assessment of readings.

Segments are published (table profile_comparator); which of them a grade goes from and to is from memory (profile_grades).
"""

from __future__ import annotations

import re

from specgen.standards.tables import table
from specgen.units.quantity import Quantity, Range

_GRADE = re.compile(r"(?P<grade>fine|medium|coarse)(?:[ ,]*\(?(?P<of>grit|shot|G|S)\)?)?", re.I)
_COMPARATORS = {"g": "grit", "s": "shot"}


def grade_ranges(text: str) -> dict[str, Range]:
    """The profiles that a grade stands for, by comparator, grit and shot where it names neither: from one segment up to, not including,
    the next. Nothing for a text that is no grade."""
    found = _GRADE.fullmatch(" ".join(text.split()))
    if found is None:
        return {}
    of = (found["of"] or "").lower()
    heights = {(row["comparator"], row["segment"]): row["nominal_um"] for row in table("profile_comparator").rows}
    return {
        row["comparator"]: Range(
            "thickness",
            *(
                Quantity.of("thickness", int(height), "um", height)
                for height in (
                    heights[row["comparator"], row["from_segment"]],
                    heights[row["comparator"], row["below_segment"]],
                )
            ),
        )
        for row in table("profile_grades").rows
        if row["grade"] == found["grade"].lower() and _COMPARATORS.get(of, of) in {"", row["comparator"]}
    }
