"""When each step of a job can begin: exact for one load on a stated grid of time, loads one after the other for several bays.

Times are whole minutes from the moment the plan begins. A task begins on the grid, in one piece, inside working hours and with
painters free; between two tasks lies an interval whose ends depend on when the earlier one ended, for nights are cold. All
starts that can be reached are kept, so the earliest end of a chain is the earliest there is on the grid. Several loads are laid
one after the other in the order given, each into the bay where it ends first, with one bay, two and so on, and the best is
kept: a rule of thumb, so no plan found does not mean that there is none. Called by facts on the schedule of a job.
"""

from __future__ import annotations

from bisect import bisect_left
from collections.abc import Callable, Sequence
from dataclasses import dataclass, field
from typing import NamedTuple

Minutes = int

_DAY = 24 * 60
_AHEAD = (4 * _DAY, 14 * _DAY, 28 * _DAY)

Bound = Callable[[Minutes], Minutes | None]
"""From the end of a task to the first or last start of the next; None for none at all (a first) or no limit (a last)."""


class Task(NamedTuple):
    """A piece of work that is attended. `first` and `last` say when the one after it may begin; the last task has neither.

    `painters` it takes; `in_bay` for what is done in the bay that the load keeps from then on; `shut` are the stretches in which
    it is not done, in their order and apart.
    """

    id: str
    minutes: Minutes
    painters: int = 1
    in_bay: bool = True
    first: Bound | None = None
    last: Bound | None = None
    shut: tuple[tuple[Minutes, Minutes], ...] = ()


class Placed(NamedTuple):
    """A task in the plan: its start and end, the range its start may move in without a later end of all, and the last start of the
    next task (None where there is no limit or no next).
    """

    task: Task
    start: Minutes
    end: Minutes
    earliest: Minutes
    latest: Minutes
    expires: Minutes | None

    @property
    def critical(self) -> bool:
        """True where it cannot begin later without a later end of all."""
        return self.earliest == self.latest


class Conflict(NamedTuple):
    """No start was found for `after`: `before` allowed it from `first` to `last` at the earliest (None: for ever), and no
    working time fits; `before` is None where already the first task finds no place.
    """

    before: Task | None
    after: Task
    first: Minutes | None = None
    last: Minutes | None = None


class Calendar(NamedTuple):
    """Working time as pairs of minutes, in their order and apart; the grid and the end of all that is looked at."""

    hours: tuple[tuple[Minutes, Minutes], ...]
    grid: Minutes
    horizon: Minutes

    def cells(self) -> int:
        return self.horizon // self.grid


@dataclass(slots=True)
class _Crew:
    """Painters busy in each cell of the grid."""

    calendar: Calendar
    painters: int
    busy: list[int] = field(init=False)

    def __post_init__(self) -> None:
        self.busy = [self.painters] * self.calendar.cells()
        for begin, end in self.calendar.hours:
            for cell in range(-(-begin // self.calendar.grid), min(end // self.calendar.grid, len(self.busy))):
                self.busy[cell] = 0

    def runs(self, task: Task) -> list[int]:
        """For each cell, how many from it on have the painters of the task free and are not shut to it."""
        cells, grid = len(self.busy), self.calendar.grid
        shut = [False] * cells
        for begin, end in task.shut:
            for cell in range(max(begin // grid, 0), min(-(-end // grid), cells)):
                shut[cell] = True
        found = [0] * (cells + 1)
        for cell in range(cells - 1, -1, -1):
            free = self.busy[cell] + task.painters <= self.painters and not shut[cell]
            found[cell] = found[cell + 1] + 1 if free else 0
        return found

    def take(self, start: Minutes, minutes: Minutes, painters: int) -> None:
        grid = self.calendar.grid
        for cell in range(start // grid, -(-(start + minutes) // grid)):
            self.busy[cell] += painters


_Kind = tuple[int, tuple[tuple[Minutes, Minutes], ...]]


def _kind(task: Task) -> _Kind:
    return task.painters, task.shut


class Load(NamedTuple):
    """What is coated together: its tasks in their order, and how long the bay stays taken after the last one, by its end."""

    id: str
    tasks: tuple[Task, ...]
    released: Bound


class Laid(NamedTuple):
    """One load in the plan: its bay, counted from 1, its tasks, and when the bay is free again."""

    load: Load
    bay: int
    tasks: tuple[Placed, ...]
    free: Minutes


def timetable(loads: Sequence[Load], calendar: Calendar, painters: int, bays: int) -> tuple[Laid, ...] | Conflict:
    """The plan whose last bay is free soonest, of those with one bay up to `bays`; the conflict met with all of them where none is."""
    best: tuple[Laid, ...] | None = None
    conflict: Conflict | None = None
    for number in range(1, max(1, min(bays, len(loads))) + 1):
        laid = _laid(loads, calendar, painters, number)
        if isinstance(laid, Conflict):
            conflict = laid
        elif best is None or _done(laid) < _done(best):
            best = laid
    if best is not None:
        return best
    if conflict is None:
        raise ValueError("there is no load to lay")
    return conflict


def _done(laid: tuple[Laid, ...]) -> Minutes:
    return max((one.free for one in laid), default=0)


def _laid(loads: Sequence[Load], calendar: Calendar, painters: int, bays: int) -> tuple[Laid, ...] | Conflict:
    crew = _Crew(calendar, painters)
    free = [0] * bays
    done: list[Laid] = []
    for load in loads:
        runs: dict[_Kind, list[int]] = {}
        for task in load.tasks:
            if _kind(task) not in runs:
                runs[_kind(task)] = crew.runs(task)
        tries = [
            (bay, _chain(load, runs, calendar, free[bay])) for bay in sorted(range(bays), key=lambda bay: free[bay])
        ]
        found = [(bay, chain) for bay, chain in tries if not isinstance(chain, Conflict)]
        if not found:
            return next(chain for _, chain in tries if isinstance(chain, Conflict))
        bay, chain = min(found, key=lambda entry: _released(load, entry[1], calendar))
        for placed in chain:
            crew.take(placed.start, placed.task.minutes, placed.task.painters)
        free[bay] = _released(load, chain, calendar)
        done.append(Laid(load, bay + 1, chain, free[bay]))
    return tuple(done)


def _released(load: Load, chain: tuple[Placed, ...], calendar: Calendar) -> Minutes:
    until = load.released(chain[-1].end)
    return until if until is not None else calendar.horizon


def _chain(
    load: Load, runs: dict[_Kind, list[int]], calendar: Calendar, bay_free: Minutes
) -> tuple[Placed, ...] | Conflict:
    """The tasks of one load at their earliest, for the earliest end of the last.

    Starts are looked at up to a day that is moved on while none is found. A chain found before it is the earliest of all, for one
    with a later start ends later.
    """
    found: tuple[Placed, ...] | Conflict | None = None
    for ahead in _AHEAD:
        until = min(bay_free + ahead, calendar.horizon)
        found = _chain_until(load, runs, calendar.grid, bay_free, until)
        if not isinstance(found, Conflict) or until == calendar.horizon:
            return found
    return _chain_until(load, runs, calendar.grid, bay_free, calendar.horizon)


def _chain_until(
    load: Load, runs: dict[_Kind, list[int]], grid: Minutes, bay_free: Minutes, until: Minutes
) -> tuple[Placed, ...] | Conflict:
    reached: list[list[Minutes]] = []
    spans: list[tuple[Minutes, Minutes | None]] = [(0, None)]
    entered = False
    for number, task in enumerate(load.tasks):
        needed = -(-task.minutes // grid)
        run = runs[_kind(task)]
        starts = [cell * grid for cell in _cells_in(spans, grid, until // grid) if run[cell] >= needed]
        if task.in_bay and not entered:
            starts = [start for start in starts if start >= bay_free]
            entered = True
        if not starts:
            before = load.tasks[number - 1] if number else None
            return Conflict(before, task, spans[0][0] if spans and number else None, spans[0][1] if spans else None)
        reached.append(starts)
        spans = _spans(task, starts)
    return _placed(load.tasks, reached)


def _spans(task: Task, starts: Sequence[Minutes]) -> list[tuple[Minutes, Minutes | None]]:
    """Where the next task may begin, apart and in order, for all starts together.

    A later start may open earlier: what ends after a cold night waits less.
    """
    windows = sorted(
        (window for start in starts if (window := _window(task, start)) is not None), key=lambda window: window[0]
    )
    found: list[tuple[Minutes, Minutes | None]] = []
    for first, last in windows:
        if found and (found[-1][1] is None or first <= found[-1][1] + 1):
            low, high = found[-1]
            found[-1] = (low, None if last is None or high is None else max(high, last))
        else:
            found.append((first, last))
    return found


def _window(task: Task, start: Minutes) -> tuple[Minutes, Minutes | None] | None:
    """The starts of the next task that a start of this one allows; None where there are none."""
    end = start + task.minutes
    first = task.first(end) if task.first is not None else end
    last = task.last(end) if task.last is not None else None
    if first is None or (last is not None and last < first):
        return None
    return first, last


def _cells_in(spans: Sequence[tuple[Minutes, Minutes | None]], grid: Minutes, cells: int) -> list[int]:
    found: list[int] = []
    for first, last in spans:
        begin = max(-(-first // grid), found[-1] + 1 if found else 0)
        found.extend(range(begin, cells if last is None else min(last // grid + 1, cells)))
    return found


def _placed(tasks: Sequence[Task], reached: list[list[Minutes]]) -> tuple[Placed, ...]:
    """From the earliest start of the last task back to the starts that lead there, then the earliest of them forward."""
    leading: list[list[Minutes]] = [reached[-1][:1]]
    for task, starts in zip(reversed(tasks[:-1]), reversed(reached[:-1]), strict=True):
        following = leading[0]
        leading.insert(0, [start for start in starts if _next(task, start, following) is not None])
    placed: list[Placed] = []
    start: Minutes | None = leading[0][0]
    for number, task in enumerate(tasks):
        if start is None:
            raise AssertionError("a start that leads on has one that follows")
        window = _window(task, start)
        expires = window[1] if window is not None and number + 1 < len(tasks) else None
        placed.append(Placed(task, start, start + task.minutes, leading[number][0], leading[number][-1], expires))
        start = _next(task, start, leading[number + 1]) if number + 1 < len(tasks) else None
    return tuple(placed)


def _next(task: Task, start: Minutes, following: Sequence[Minutes]) -> Minutes | None:
    """The first of the following starts that a start of this task allows."""
    window = _window(task, start)
    if window is None:
        return None
    at = bisect_left(following, window[0])
    if at == len(following) or (window[1] is not None and following[at] > window[1]):
        return None
    return following[at]
