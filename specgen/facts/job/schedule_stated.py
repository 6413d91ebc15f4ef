"""What a job states for its plan, and what in it stands in the way: hours, people, times of steps, loads, air. Called by `schedule`.

Nothing is guessed: what is missing or contradicts itself becomes a fault with its place.
"""

from __future__ import annotations

from collections.abc import Iterator
from datetime import date, datetime, timedelta
from typing import NamedTuple

from specgen.facts.job.hourly_air import Hole, Hour, HourlyAir, from_profile
from specgen.facts.job.plan import GRID, Fault
from specgen.model.job import Job
from specgen.model.schedule import Schedule, StepTime, Weekday, Work
from specgen.model.spec import Spec
from specgen.model.system import Layer, System
from specgen.model.walk import Path
from specgen.trade.timetable import Calendar, Minutes
from specgen.units.moments import show_moment

DAYS = 60
"""How far a plan looks ahead."""
DAY: Minutes = 24 * 60
_WEEK = tuple(Weekday)


def coats_not_there(job: Job, spec: Spec) -> tuple[Fault, ...]:
    """The times stated for a coat that no system of the job has."""
    coats = [layer.id for system in spec.systems_of(job) for layer in system.layers]
    return tuple(
        Fault(
            ("jobs", job.id, "schedule", "times", entry.id, "coat"),
            f"{entry.coat} is no coat of a system of {job.id}",
            f"name a coat of its systems: {', '.join(coats)}",
        )
        for entry in (job.schedule.times if job.schedule is not None else ())
        if entry.coat is not None and coats and entry.coat not in coats
    )


def closed_hours(job: Job, start: datetime, end: datetime) -> Iterator[tuple[datetime, datetime]]:
    """The stretches between `start` and `end` in which nobody works."""
    if job.schedule is None:
        return
    open_until = start
    for begins, ends in sorted(working_hours(job.schedule, start.date(), (end.date() - start.date()).days + 1)):
        if begins > open_until:
            yield open_until, min(begins, end)
        open_until = max(open_until, ends)
        if open_until >= end:
            return
    yield open_until, end


def working_hours(stated: Schedule, first: date, days: int) -> Iterator[tuple[datetime, datetime]]:
    """Begin and end of every stretch of work on those days."""
    for number in range(days):
        day = first + timedelta(days=number)
        for entry in stated.working_hours:
            if day not in stated.days_off and _WEEK[day.weekday()] in entry.days:
                yield datetime.combine(day, entry.begins), datetime.combine(day, entry.ends)


class Group(NamedTuple):
    """Items coated together with one system."""

    id: str
    system: System
    items: tuple[str, ...]


class Stated:
    """The schedule of one job from one start; `faults` are gathered by what is asked."""

    def __init__(self, job: Job, spec: Spec, stated: Schedule, start: datetime) -> None:
        self.job, self.spec, self.stated, self.start = job, spec, stated, start
        self.at: Path = ("jobs", job.id, "schedule")
        self.origin = start.replace(minute=0, second=0, microsecond=0)
        self.faults: list[Fault] = []

    def look_for_faults(self) -> None:
        self.faults.extend(coats_not_there(self.job, self.spec))
        if not self.stated.working_hours:
            self.fault(("working_hours",), "no working hours are stated", "state days, begin and end of work")
        for entry in self.stated.working_hours:
            if entry.ends <= entry.begins:
                what = f"work ends at {entry.ends:%H:%M}, not after it begins at {entry.begins:%H:%M}"
                self.fault(("working_hours", entry.id), what, "write a shift past midnight as two entries")
        for name in ("painters", "bays"):
            if getattr(self.stated, name) == 0:
                self.fault((name,), f"there are no {name}", "state one at least")
        needed = max((entry.painters or 1 for entry in self.stated.times), default=1)
        if needed > (self.stated.painters or 1):
            what = f"a step takes {needed} painters, and there are {self.stated.painters or 1}"
            self.fault(("times",), what, "state more painters, or fewer on the step")
        told: set[tuple[Work, str | None]] = set()
        for time in self.stated.times:
            if (time.work, time.coat) in told:
                step = time.work.value if time.coat is None else f"{time.work.value} of {time.coat}"
                self.fault(("times", time.id), f"the time of {step} is stated twice", "state it once")
            told.add((time.work, time.coat))
            if not time.time.number:
                self.fault(("times", time.id, "time"), "the step takes no time", "state the time it takes")
            if time.dries_for is not None and time.work is not Work.PREPARATION:
                what = f"a drying time after {time.work.value} is stated; a coat dries by its overcoating interval"
                self.fault(("times", time.id, "dries_for"), what, "leave it out")
        if self.stated.working_hours and not self._works_on(self.start.date()):
            what = f"nobody works on {self.start:%A %Y-%m-%d}, when the work is to start"
            self.fault(("starts",), what, "start on a working day")

    def fault(self, below: Path, what: str, put_right: str) -> None:
        self.faults.append(Fault((*self.at, *below), what, put_right))

    def air(self) -> tuple[HourlyAir, HourlyAir] | None:
        if self.stated.air:
            found = from_profile(self.stated.air, self.origin)
            odd = next((hour for hour in self.stated.air if hour.begins.minute), None)
            if odd is not None:
                what = f"the air is stated from {show_moment(odd.begins)}; an hour of it begins on the hour"
                self.fault(("air", odd.id), what, "state it for each full hour, as in 2026-11-27 14:00")
                return None
            if isinstance(found, Hole):
                what = (
                    f"the hour of {show_moment(found.entry.begins)} does not follow on the one before, which would be "
                    f"{show_moment(found.expected)}"
                )
                self.fault(
                    ("air", found.entry.id), what, "state every hour once, in one time without a change of the clock"
                )
                return None
            if found is None:
                what = f"the air is not stated for the start, {show_moment(self.origin)}"
                self.fault(("air",), what, "begin the profile with the hour of the start or earlier")
                return None
            return found, found
        climate = self.job.climate
        low = climate.air.low if climate is not None and climate.air is not None else None
        high = climate.air.high if climate is not None and climate.air is not None else None
        if climate is None or low is None or high is None:
            at: Path = ("jobs", self.job.id, "climate", "air")
            self.faults.append(
                Fault(
                    at,
                    "coldest and warmest air are not both stated, and no air by the hour",
                    "state both, as in 16..26 degC",
                )
            )
            return None
        driest = climate.humidity.low if climate.humidity is not None else None
        return HourlyAir((Hour(low, driest),)), HourlyAir((Hour(high, driest),))

    def groups(self) -> tuple[Group, ...]:
        found: list[Group] = []
        items = {item.id: item for item in self.job.items}
        if not self.stated.loads:
            for one in self.spec.systems_of(self.job):
                own = tuple(item.id for item in self.job.items if self.spec.system_of(self.job, item) == one)
                found.append(Group(one.id, one, own))
            return tuple(found)
        placed: dict[str, str] = {}
        for load in self.stated.loads:
            for name in load.items:
                if name not in items:
                    self.fault(("loads", load.id, "items"), f"there is no item {name}", "name items of this job")
                elif name in placed:
                    what = f"the item {name} is in the load {placed[name]} already"
                    self.fault(("loads", load.id, "items"), what, "put each item into one load")
                placed[name] = load.id
            systems = {
                system.id: system
                for name in load.items
                if name in items and (system := self.spec.system_of(self.job, items[name])) is not None
            }
            if len(systems) > 1:
                what = f"the load {load.id} holds items of {len(systems)} systems: {', '.join(systems)}"
                self.fault(("loads", load.id, "items"), what, "make a load of each system")
            found.extend(Group(load.id, system, load.items) for system in systems.values())
        left = [name for name in items if name not in placed and self.spec.system_of(self.job, items[name]) is not None]
        if left:
            self.fault(("loads",), f"in no load: {', '.join(left)}", "put every item into a load")
        return tuple(found)

    def time_of(self, work: Work, layer: Layer | None = None) -> StepTime | None:
        coat = layer.id if layer is not None else None
        return next((entry for entry in self.stated.times if entry.work is work and entry.coat == coat), None)

    def _works_on(self, day: date) -> bool:
        if day in self.stated.days_off:
            return False
        return any(_WEEK[day.weekday()] in entry.days for entry in self.stated.working_hours)

    def calendar(self) -> Calendar:
        hours: list[tuple[Minutes, Minutes]] = []
        for begins, ends in working_hours(self.stated, self.origin.date(), DAYS):
            begin, end = self.minute(max(begins, self.start)), self.minute(ends)
            if begin < end:
                hours.append((begin, end))
        return Calendar(tuple(sorted(hours)), GRID, DAYS * DAY)

    def minute(self, moment: datetime) -> Minutes:
        return int((moment - self.origin).total_seconds() // 60)

    def on_the_safe_side(self, minute: Minutes | None) -> datetime | None:
        """The next moment on the grid: nobody waits for an odd minute."""
        return None if minute is None else self.moment(-(-minute // GRID) * GRID)

    def moment(self, minute: Minutes) -> datetime:
        return self.origin + timedelta(minutes=minute)
