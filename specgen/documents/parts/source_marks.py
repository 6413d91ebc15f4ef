"""Sources of a table as small numbers in its rows, told in full below it. Called by `goes_over`, `faults` and `repair_procedure`."""

from __future__ import annotations

Marks = dict[str, str]
"""The words of a source to its mark, in the order the sources are met."""


def mark(source: str, marks: Marks) -> str:
    """The mark of a source; a source met for the first time gets the next number."""
    return marks.setdefault(source, str(len(marks) + 1))


def listed(marks: Marks) -> tuple[tuple[str, str], ...]:
    """(mark, source) in the order of the marks."""
    return tuple((number, source) for source, number in marks.items())
