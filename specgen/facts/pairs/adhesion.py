"""Measured adhesion of an old coat against the mark below which new paint pulls it off. Called by the rules of this folder.

The mark is that of the tape test by method A; method B and ISO 2409 are read on the same five steps, which is common practice.
"""

from __future__ import annotations

from typing import NamedTuple

from specgen.model.job import WORST_CLASS, OldCoat
from specgen.standards.citations import PRACTICE, Citation
from specgen.standards.tables import table


class WeakAdhesion(NamedTuple):
    """The leaf that holds the reading, the reading in words, and on whose word it is weak."""

    leaf: str
    words: str
    source: Citation


def weak_adhesion(coat: OldCoat) -> WeakAdhesion | None:
    """None where nothing was measured or it holds."""
    row = table("old_paint_tests").row("id", "adhesion_marginal")
    marginal = int(row["most"])
    if coat.tape is not None and coat.tape.number <= marginal:
        by_cross = coat.tape.value.endswith("A")
        source = table("old_paint_tests").row_citation(row) if by_cross else PRACTICE
        return WeakAdhesion("tape", f"class {coat.tape} of ASTM D3359", source)
    if coat.cross_cut is not None and coat.cross_cut >= WORST_CLASS - marginal:
        return WeakAdhesion("cross_cut", f"class {coat.cross_cut} of ISO 2409", PRACTICE)
    return None
