"""Plans against a simulation that goes minute by minute and knows nothing of how they were made, and against all plans there are."""

from __future__ import annotations

import random
from dataclasses import dataclass
from itertools import product

import pytest

from specgen.trade.timetable import Calendar, Conflict, Laid, Load, Minutes, Placed, Task, timetable

GRID = 15
HOUR = 60
DAY = 24 * HOUR


@dataclass
class Job:
    """A random job: hours of air, for each wait its minutes by air, working hours, tasks."""

    hours: tuple[tuple[Minutes, Minutes], ...]
    horizon: Minutes
    loads: tuple[Load, ...]
    waits: dict[str, tuple[int, int | None]]
    releases: dict[str, int]
    painters: int
    bays: int


def bound(minutes: int) -> object:
    return lambda end: end + minutes


def job(seed: int, loads: int, tasks: int, days: int) -> Job:
    draw = random.Random(seed)
    begin, end = draw.choice([(7 * HOUR, 16 * HOUR), (8 * HOUR, 12 * HOUR), (6 * HOUR, 14 * HOUR)])
    hours = tuple((day * DAY + begin, day * DAY + end) for day in range(days) if draw.random() < 0.8)
    waits: dict[str, tuple[int, int | None]] = {}
    made: list[Load] = []
    releases: dict[str, int] = {}
    for number in range(loads):
        chain: list[Task] = []
        for index in range(tasks):
            id = f"{number}.{index}"
            least = draw.choice([0, 20, 45, 90, 240, 16 * HOUR])
            most = draw.choice([None, least + 30, least + 240, least + 24 * HOUR])
            waits[id] = (least, most)
            last = None if most is None else bound(most)
            minutes = draw.choice([15, 30, 45, 90, 180])
            painters = draw.choice([1, 1, 2])
            chain.append(Task(id, minutes, painters, index > 0, bound(least), last, damp(seed, id, days)))  # type: ignore[arg-type]
        releases[str(number)] = draw.choice([0, 120, 20 * HOUR])
        made.append(Load(str(number), tuple(chain), bound(releases[str(number)])))  # type: ignore[arg-type]
    return Job(hours, days * DAY, tuple(made), waits, releases, 2, draw.choice([1, 2, 3]))


def damp(seed: int, id: str, days: int) -> tuple[tuple[Minutes, Minutes], ...]:
    """Hours of every third job in which the air keeps a task from being done."""
    draw = random.Random(f"{seed} {id}")
    if seed % 3:
        return ()
    return tuple((hour * HOUR, hour * HOUR + HOUR) for hour in range(days * 24) if draw.random() < 0.15)


def planned(one: Job) -> tuple[Laid, ...] | Conflict:
    return timetable(one.loads, Calendar(one.hours, GRID, one.horizon), one.painters, one.bays)


def simulated(one: Job, laid: tuple[Laid, ...]) -> list[str]:
    """What a foreman with a watch would find wrong, minute by minute."""
    wrong: list[str] = []
    starts = {placed.task.id: placed.start for each in laid for placed in each.tasks}
    tasks = {task.id: task for load in one.loads for task in load.tasks}
    running: dict[str, int] = {}
    ended: dict[str, int] = {}
    bay_of = {each.load.id: each.bay for each in laid}
    holder: dict[int, str] = {}
    until: dict[int, int] = {}
    for minute in range(one.horizon + 1):
        for id in [id for id, left in running.items() if left == 0]:
            del running[id]
            ended[id] = minute
            load = id.partition(".")[0]
            if id == one.loads[int(load)].tasks[-1].id:
                until[bay_of[load]] = minute + one.releases[load]
        for id in [id for id, start in starts.items() if start == minute]:
            load, _, index = id.partition(".")
            if minute % GRID:
                wrong.append(f"{id} begins off the grid")
            if int(index):
                before = f"{load}.{int(index) - 1}"
                least, most = one.waits[before]
                if before not in ended or minute - ended[before] < least:
                    wrong.append(f"{id} begins before its interval")
                elif most is not None and minute - ended[before] > most:
                    wrong.append(f"{id} begins after its interval")
            if tasks[id].in_bay:
                bay = bay_of[load]
                if holder.get(bay, load) != load and minute < until.get(bay, one.horizon + 1):
                    wrong.append(f"{id} finds its bay taken")
                holder[bay] = load
            running[id] = tasks[id].minutes
        if running:
            if not any(begin <= minute < end for begin, end in one.hours):
                wrong.append(f"work at {minute} outside working hours")
            if any(begin <= minute < end for id in running for begin, end in tasks[id].shut):
                wrong.append(f"work at {minute} in air that is not allowed")
            if sum(tasks[id].painters for id in running) > one.painters:
                wrong.append(f"too many painters at {minute}")
        running = {id: left - 1 for id, left in running.items()}
    wrong += [f"{id} never ended" for id in starts if id not in ended]
    return wrong


@pytest.mark.parametrize("block", range(10))
def test_simulated_minute_by_minute(block: int) -> None:
    """Five hundred random jobs in all; most of them have a plan."""
    found = 0
    for seed in range(block * 50, block * 50 + 50):
        one = job(seed, loads=1 + seed % 3, tasks=2 + seed % 3, days=6)
        laid = planned(one)
        if isinstance(laid, Conflict):
            continue
        found += 1
        assert len(laid) == len(one.loads)
        assert simulated(one, laid) == [], f"job {seed}"
    assert found >= 20


@pytest.mark.parametrize("seed", range(60))
def test_no_chain_ends_earlier(seed: int) -> None:
    """Every start of every task tried: one load, so the search is exact."""
    one = job(1000 + seed, loads=1, tasks=3, days=2)
    chain = one.loads[0].tasks
    free = {m for begin, end in one.hours for m in range(begin, end)}
    allowed = [free - {m for begin, end in task.shut for m in range(begin, end)} for task in chain]
    fits = [
        [start for start in range(0, one.horizon, GRID) if all(m in own for m in range(start, start + task.minutes))]
        for task, own in zip(chain, allowed, strict=True)
    ]
    best: int | None = None
    for starts in product(*fits):
        for before, task, following in zip(starts, chain, starts[1:], strict=False):
            least, most = one.waits[task.id]
            waited = following - before - task.minutes
            if waited < least or (most is not None and waited > most):
                break
        else:
            end = starts[-1] + chain[-1].minutes
            best = end if best is None else min(best, end)
    laid = planned(one)
    if best is None:
        assert isinstance(laid, Conflict)
    else:
        assert not isinstance(laid, Conflict)
        assert laid[0].tasks[-1].end == best


def test_a_longer_day_is_never_later() -> None:
    for seed in range(100):
        one = job(seed, loads=1, tasks=3, days=6)
        longer = Job(
            tuple((begin, end + 120) for begin, end in one.hours), one.horizon, one.loads, one.waits, one.releases, 2, 1
        )
        short, long = planned(one), planned(longer)
        if not isinstance(short, Conflict):
            assert not isinstance(long, Conflict)
            assert long[0].tasks[-1].end <= short[0].tasks[-1].end


def test_a_coat_more_never_shortens() -> None:
    for seed in range(100):
        one = job(seed, loads=1, tasks=3, days=6)
        fewer = Load("0", one.loads[0].tasks[:-1], one.loads[0].released)
        whole, part = planned(one), timetable([fewer], Calendar(one.hours, GRID, one.horizon), 2, 1)
        if not isinstance(whole, Conflict):
            assert not isinstance(part, Conflict)
            assert part[0].tasks[-1].end <= whole[0].tasks[-1].end


def places(laid: tuple[Laid, ...] | Conflict) -> list[Placed]:
    assert not isinstance(laid, Conflict)
    return [placed for each in laid for placed in each.tasks]


def test_night_between_two_coats() -> None:
    """Sixteen hours after an end at 15:00 is 07:00 of the next day; a maximum of 15 h finds nobody at work."""
    hours = tuple((day * DAY + 7 * HOUR, day * DAY + 16 * HOUR) for day in range(3))
    for least, most, start in ((16 * HOUR, None, DAY + 7 * HOUR), (10 * HOUR, 17 * HOUR, DAY + 7 * HOUR)):
        last = None if most is None else bound(most)
        first = Task("0.0", 8 * HOUR, 1, True, bound(least), last)  # type: ignore[arg-type]
        load = Load("0", (first, Task("0.1", 60)), lambda end: end)
        assert places(timetable([load], Calendar(hours, GRID, 3 * DAY), 1, 1))[1].start == start
    first = Task("0.0", 9 * HOUR, 1, True, bound(HOUR), bound(14 * HOUR))  # type: ignore[arg-type]
    load = Load("0", (first, Task("0.1", 60)), lambda end: end)
    found = timetable([load], Calendar(hours, GRID, 3 * DAY), 1, 1)
    assert isinstance(found, Conflict)
    assert (found.before, found.after.id) == (first, "0.1")
    assert (found.first, found.last) == (17 * HOUR, 30 * HOUR)


def test_more_painters_than_there_are_find_no_place() -> None:
    load = Load("0", (Task("0.0", 60, painters=3),), lambda end: end)
    found = timetable([load], Calendar(((0, 600),), GRID, DAY), 2, 1)
    assert isinstance(found, Conflict)
    assert found.before is None


def test_two_bays_end_sooner_where_that_helps() -> None:
    hours = tuple((day * DAY + 7 * HOUR, day * DAY + 16 * HOUR) for day in range(6))
    loads = [Load(str(n), (Task(f"{n}.0", 60),), lambda end: end + 20 * HOUR) for n in range(2)]
    one, two = (timetable(loads, Calendar(hours, GRID, 6 * DAY), 2, bays) for bays in (1, 2))
    assert places(one)[1].start > places(two)[1].start == places(two)[0].start
