"""Why a step of a plan does not begin as soon as the step before it allows. Called by `schedule`, for each step that waits.

The hours between that moment and its start are looked through on the grid: nobody works, the work does not fit, the air is out of
its limits, painters or bay are taken, or begun then a later step would miss its interval.
"""

from __future__ import annotations

from collections.abc import Sequence

from specgen.trade.timetable import Calendar, Laid, Minutes, Placed

Shut = tuple[tuple[Minutes, Minutes], str]
"""Minutes in which a coat may not go on, and why."""


def held_up(
    one: Laid,
    placed: Placed,
    opens: Minutes,
    laid: Sequence[Laid],
    calendar: Calendar,
    painters: int,
    shut: Sequence[Shut] = (),
) -> str:
    """The reason in words; empty where the step begins when it may, or could begin earlier without an earlier end of all."""
    begins = placed.earliest
    opens = -(-opens // calendar.grid) * calendar.grid
    if begins <= opens:
        return ""
    moments = range(opens, begins, calendar.grid)
    at_work = [moment for moment in moments if any(begin <= moment < end for begin, end in calendar.hours)]
    if not at_work:
        return "for working hours"
    takes = placed.task.minutes
    fits = [at for at in at_work if any(begin <= at and at + takes <= end for begin, end in calendar.hours)]
    if not fits:
        return f"for {takes} min of working time in one piece"
    airs = [(at, _missed(shut, at, at + takes)) for at in fits]
    if missed := [why for _, why in airs if why]:
        fits = [at for at, why in airs if not why]
        if not fits:
            return f"for air within its limits, for before {missed[-1]}"
    others = [(other, task) for other in laid for task in other.tasks if task is not placed]
    free = [at for at in fits if _busy(others, at, at + takes) + placed.task.painters <= painters]
    if not free:
        return "for the painters, who are at other work"
    taken = [other for other in laid if other is not one and other.bay == one.bay]
    if placed.task.in_bay and all(any(_in_bay(other, at, at + takes) for other in taken) for at in free):
        return f"for bay {one.bay} to be free"
    return "so that each later step finds working time within its interval"


def _missed(shut: Sequence[Shut], start: Minutes, end: Minutes) -> str:
    return next((why for (begins, ends), why in shut if begins < end and start < ends), "")


def _busy(others: Sequence[tuple[Laid, Placed]], start: Minutes, end: Minutes) -> int:
    return sum(task.task.painters for _, task in others if task.start < end and start < task.end)


def _in_bay(other: Laid, start: Minutes, end: Minutes) -> bool:
    """Whether a load keeps its bay at any time between these."""
    first = next((task.start for task in other.tasks if task.task.in_bay), other.free)
    return first < end and start < other.free
