"""Months from one day to another, as a shelf life counts them. Asked by the rule on the last day of use."""

from __future__ import annotations

from datetime import date

_MONTHS_OF_A_YEAR = 12


def months_between(first: date, last: date) -> int:
    """Months by the calendar, days left out: from 31 January to 1 February is one."""
    return (last.year - first.year) * _MONTHS_OF_A_YEAR + last.month - first.month
