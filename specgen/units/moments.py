"""A moment as somebody who plans reads it: the day of the week, the date and the time. Called by findings, reports and facts."""

from __future__ import annotations

from datetime import date, datetime


def show_moment(when: datetime) -> str:
    """As in `Fri 2026-11-27 14:00`."""
    return f"{when:%a %Y-%m-%d %H:%M}"


def show_day(day: date) -> str:
    """As in `Fri 2026-11-27`."""
    return f"{day:%a %Y-%m-%d}"
