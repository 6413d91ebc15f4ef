"""A difference that rounding between units explains is told as a note. Called by every rule that holds one stated value against another."""

from __future__ import annotations

from collections.abc import Sequence

from specgen.findings import Severity
from specgen.rules.declare import Problem
from specgen.units.between_units import explained_by_rounding, range_explained, sum_explained
from specgen.units.quantity import Quantity, Range


def unless_rounded(problem: Problem, one: Quantity, other: Quantity) -> Problem:
    """The problem as it is; a note where the two values it tells of differ by rounding between their units alone."""
    return _as_note(problem) if explained_by_rounding(one, other) else problem


def unless_range_rounded(problem: Problem, asked: Range, *allowed: Range) -> Problem:
    """The same of a range that goes beyond each of those allowed."""
    return _as_note(problem) if all(range_explained(one, asked) for one in allowed) else problem


def unless_sum_rounded(problem: Problem, total: Quantity, terms: Sequence[Quantity]) -> Problem:
    """The same of a stated total and the terms it is the sum of."""
    return _as_note(problem) if sum_explained(total, terms) else problem


def _as_note(problem: Problem) -> Problem:
    what = f"{problem.what}; rounding between units explains the difference"
    return problem._replace(what=what, remedy="state both values in one unit", severity=Severity.NOTE)
