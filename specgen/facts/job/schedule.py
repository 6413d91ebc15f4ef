"""The plan of a job: when each step begins and ends, what waits for what, when the parts may be handled and return to service.

From working hours, people, bays and the times of the steps as the job states them, the intervals of its coats and its air. A
load keeps its bay from its first coat until it may be handled. Times of steps are rounded up to the grid. Nothing is guessed:
what is not stated is told with its place. A plan is arithmetic; whether work may begin is for the person responsible. Asked by
the command on the schedule and by the method statement.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator
from dataclasses import dataclass
from datetime import date, datetime, timedelta
from functools import cache

from specgen.facts.job.air_allows import moist, not_allowed
from specgen.facts.job.held_up import held_up
from specgen.facts.job.hourly_air import HOUR, Hole, Hour, HourlyAir, from_profile
from specgen.facts.job.quantities import quantities
from specgen.facts.layer.waits import reaches, sandable_in, wait_between
from specgen.facts.memo import memoised
from specgen.model.drying import DryingStage
from specgen.model.job import Job
from specgen.model.schedule import Schedule, StepTime, Weekday, Work
from specgen.model.spec import Spec
from specgen.model.system import Layer, System
from specgen.model.walk import Path
from specgen.trade.known import NotKnown
from specgen.trade.timetable import Calendar, Conflict, Laid, Load, Minutes, Placed, Task, timetable
from specgen.units.moments import show_day, show_moment
from specgen.units.quantity import Quantity

GRID: Minutes = 15
"""Minutes: every step begins on the quarter of an hour."""

_DAYS = 60
_DAY: Minutes = 24 * 60
_YEARS = (1970, 2199)
_READINGS = timedelta(hours=4)
_WEEK = tuple(Weekday)


@dataclass(frozen=True, slots=True)
class Fault:
    """What stands in the way of a plan, at its path in the sources, and what to do."""

    at: Path
    what: str
    put_right: str


@dataclass(frozen=True, slots=True)
class Step:
    """One step of the plan. `latest_start` moves it without a later end of all; `expires` is the last start of the step after it.

    `held_up` says what it waits for since the step before it ended; it is empty where it begins then.
    """

    load: str
    bay: int
    work: Work
    system: System
    layer: Layer | None
    start: datetime
    end: datetime
    latest_start: datetime
    expires: datetime | None
    slack: timedelta | None
    held_up: str

    @property
    def critical(self) -> bool:
        return self.start == self.latest_start


@dataclass(frozen=True, slots=True)
class Done:
    """When one load may be handled, goes back into service and is fully cured; None where it is not stated for that air."""

    load: str
    last_coat: datetime
    handling: datetime | None
    service: datetime | None
    cured: datetime | None


@dataclass(frozen=True, slots=True)
class Plan:
    """Steps in the order they begin; dates of each load; when the climate is read; packs of each (product, variant) by day."""

    start: datetime
    bays: int
    steps: tuple[Step, ...]
    done: tuple[Done, ...]
    readings: tuple[datetime, ...]
    packs: tuple[tuple[date, str, int], ...]


@dataclass(frozen=True, slots=True)
class NoPlan:
    """No plan was found; that does not mean that there is none. The two steps that conflict, and what would resolve it."""

    load: str
    before: str
    after: str
    why: str
    resolves: tuple[str, ...]


Answer = Plan | NoPlan | tuple[Fault, ...]


def schedule(job: Job, spec: Spec, start: datetime | None = None) -> Answer:
    """The plan from `start`, else from the start the job states."""
    return _scheduled(spec, job.id, start) if spec.jobs.get(job.id) == job else _worked_out(spec, job, start)


@memoised
def _scheduled(spec: Spec, job: str, start: datetime | None) -> Answer:
    return _worked_out(spec, spec.jobs[job], start)


def _worked_out(spec: Spec, job: Job, start: datetime | None) -> Answer:
    at: Path = ("jobs", job.id, "schedule")
    stated = job.schedule
    if stated is None:
        coats = ", ".join(layer.id for system in spec.systems_of(job) for layer in system.layers)
        put_right = f"state working_hours, and times: of the preparation and of the application of each coat ({coats})"
        return (Fault(at, f"{job.id} states no schedule", put_right),)
    begins = start or stated.starts
    if begins is None:
        return (Fault((*at, "starts"), "the start is not stated", "state it, as in 2026-11-27 14:00"),)
    if not _YEARS[0] <= begins.year <= _YEARS[1]:
        what = f"the start is in the year {begins.year}"
        return (Fault((*at, "starts"), what, f"write a year from {_YEARS[0]} to {_YEARS[1]}"),)
    planner = _Planner(job, spec, stated, begins)
    return planner.answer()


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


@dataclass(frozen=True, slots=True)
class _Group:
    """Items coated together with one system; `share` is their part of the area that gets the system."""

    id: str
    system: System
    items: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class _Shut:
    """Minutes in which a coat may not go on, and which limit its air misses."""

    hours: tuple[Minutes, Minutes]
    why: str


class _Planner:
    """One plan of one job."""

    def __init__(self, job: Job, spec: Spec, stated: Schedule, start: datetime) -> None:
        self.job, self.spec, self.stated, self.start = job, spec, stated, start
        self.at: Path = ("jobs", job.id, "schedule")
        self.origin = start.replace(minute=0, second=0, microsecond=0)
        self.faults: list[Fault] = []
        self.unstated: list[str] = []
        # loads with one system wait alike, so that what was worked out for one holds for the next
        self.intervals: dict[tuple[str, str], tuple[_Bound, _Bound]] = {}
        self.shut: dict[str, tuple[_Shut, ...]] = {}
        self.moist = cache(moist)
        self.stages: dict[tuple[str, DryingStage, Quantity | None], Callable[[Minutes], Minutes | None]] = {}

    def answer(self) -> Answer:
        self._look_for_faults()
        air = self._air()
        groups = self._groups()
        if air is None or self.faults:
            return tuple(self.faults)
        self.cold, self.warm = air
        loads = [self._load(group) for group in groups]
        if self.faults:
            return tuple(dict.fromkeys(self.faults))
        painters, bays = self.stated.painters or 1, self.stated.bays or 1
        laid = timetable([load for load, _ in loads], self._calendar(), painters, bays)
        named = {load.id: steps for load, steps in loads}
        if isinstance(laid, Conflict):
            return self._conflict(laid, named)
        return self._plan(laid, named, {group.id: group for group in groups})

    # --- what is stated ---------------------------------------------------------------------------------------------------

    def _look_for_faults(self) -> None:
        self.faults.extend(coats_not_there(self.job, self.spec))
        if not self.stated.working_hours:
            self._fault(("working_hours",), "no working hours are stated", "state days, begin and end of work")
        for entry in self.stated.working_hours:
            if entry.ends <= entry.begins:
                what = f"work ends at {entry.ends:%H:%M}, not after it begins at {entry.begins:%H:%M}"
                self._fault(("working_hours", entry.id), what, "write a shift past midnight as two entries")
        for name in ("painters", "bays"):
            if getattr(self.stated, name) == 0:
                self._fault((name,), f"there are no {name}", "state one at least")
        needed = max((entry.painters or 1 for entry in self.stated.times), default=1)
        if needed > (self.stated.painters or 1):
            what = f"a step takes {needed} painters, and there are {self.stated.painters or 1}"
            self._fault(("times",), what, "state more painters, or fewer on the step")
        told: set[tuple[Work, str | None]] = set()
        for time in self.stated.times:
            if (time.work, time.coat) in told:
                step = time.work.value if time.coat is None else f"{time.work.value} of {time.coat}"
                self._fault(("times", time.id), f"the time of {step} is stated twice", "state it once")
            told.add((time.work, time.coat))
            if not time.time.number:
                self._fault(("times", time.id, "time"), "the step takes no time", "state the time it takes")
            if time.dries_for is not None and time.work is not Work.PREPARATION:
                what = f"a drying time after {time.work.value} is stated; a coat dries by its overcoating interval"
                self._fault(("times", time.id, "dries_for"), what, "leave it out")
        if self.stated.working_hours and not self._works_on(self.start.date()):
            what = f"nobody works on {self.start:%A %Y-%m-%d}, when the work is to start"
            self._fault(("starts",), what, "start on a working day")

    def _fault(self, below: Path, what: str, put_right: str) -> None:
        self.faults.append(Fault((*self.at, *below), what, put_right))

    def _air(self) -> tuple[HourlyAir, HourlyAir] | None:
        if self.stated.air:
            found = from_profile(self.stated.air, self.origin)
            odd = next((hour for hour in self.stated.air if hour.begins.minute), None)
            if odd is not None:
                what = f"the air is stated from {show_moment(odd.begins)}; an hour of it begins on the hour"
                self._fault(("air", odd.id), what, "state it for each full hour, as in 2026-11-27 14:00")
                return None
            if isinstance(found, Hole):
                what = (
                    f"the hour of {show_moment(found.entry.begins)} does not follow on the one before, which would be "
                    f"{show_moment(found.expected)}"
                )
                self._fault(
                    ("air", found.entry.id), what, "state every hour once, in one time without a change of the clock"
                )
                return None
            if found is None:
                what = f"the air is not stated for the start, {show_moment(self.origin)}"
                self._fault(("air",), what, "begin the profile with the hour of the start or earlier")
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

    def _groups(self) -> tuple[_Group, ...]:
        found: list[_Group] = []
        items = {item.id: item for item in self.job.items}
        if not self.stated.loads:
            for one in self.spec.systems_of(self.job):
                own = tuple(item.id for item in self.job.items if self.spec.system_of(self.job, item) == one)
                found.append(_Group(one.id, one, own))
            return tuple(found)
        placed: dict[str, str] = {}
        for load in self.stated.loads:
            for name in load.items:
                if name not in items:
                    self._fault(("loads", load.id, "items"), f"there is no item {name}", "name items of this job")
                elif name in placed:
                    what = f"the item {name} is in the load {placed[name]} already"
                    self._fault(("loads", load.id, "items"), what, "put each item into one load")
                placed[name] = load.id
            systems = {
                system.id: system
                for name in load.items
                if name in items and (system := self.spec.system_of(self.job, items[name])) is not None
            }
            if len(systems) > 1:
                what = f"the load {load.id} holds items of {len(systems)} systems: {', '.join(systems)}"
                self._fault(("loads", load.id, "items"), what, "make a load of each system")
            found.extend(_Group(load.id, system, load.items) for system in systems.values())
        left = [name for name in items if name not in placed and self.spec.system_of(self.job, items[name]) is not None]
        if left:
            self._fault(("loads",), f"in no load: {', '.join(left)}", "put every item into a load")
        return tuple(found)

    def _time(self, work: Work, layer: Layer | None = None) -> StepTime | None:
        coat = layer.id if layer is not None else None
        return next((entry for entry in self.stated.times if entry.work is work and entry.coat == coat), None)

    # --- tasks ------------------------------------------------------------------------------------------------------------

    def _load(self, group: _Group) -> tuple[Load, tuple[tuple[Work, Layer | None], ...]]:
        system = group.system
        tasks: list[Task] = []
        steps: list[tuple[Work, Layer | None]] = []

        def add(
            work: Work, layer: Layer | None, first: _Bound = None, last: _Bound = None, *, in_bay: bool = True
        ) -> None:
            entry = self._time(work, layer)
            if entry is None:
                what = f"the time of {_spoken(work, layer)} is not stated"
                self._fault(("times",), what, "add it to the times of the schedule")
                return
            shut = tuple(
                one.hours for one in (self._shut(layer) if layer is not None and work is Work.APPLICATION else ())
            )
            tasks.append(
                Task(f"{group.id}.{len(tasks)}", _on_grid(entry.time), entry.painters or 1, in_bay, first, last, shut)
            )
            steps.append((work, layer))

        preparation = self._time(Work.PREPARATION)
        if preparation is not None:
            within = self._coat_within(group)
            dries = 0 if preparation.dries_for is None else _up(preparation.dries_for)
            last = None if within is None else lambda end: end + within
            add(Work.PREPARATION, None, lambda end: end + dries, last, in_bay=False)
        for below, above in zip(system.layers, (*system.layers[1:], None), strict=True):
            if above is None:
                assembly = self._time(Work.ASSEMBLY) is not None
                add(Work.APPLICATION, below, self._handling(system) if assembly else None)
            else:
                pair = (system.id, below.id)
                if pair not in self.intervals:
                    first, last = self._interval(system, below, above)
                    self.intervals[pair] = (
                        (self._sandable(below, first), None) if self._sanded(below) else (first, last)
                    )
                add(Work.APPLICATION, below, *self.intervals[pair])
                if self._sanded(below):
                    add(Work.SANDING, below)
        if self._time(Work.ASSEMBLY) is not None:
            add(Work.ASSEMBLY, None, in_bay=False)
        return Load(group.id, tuple(tasks), self._handling(system)), tuple(steps)

    def _shut(self, layer: Layer) -> tuple[_Shut, ...]:
        """The hours of the stated air in which the coat may not go on, and all after the last that is stated."""
        if not self.stated.air:
            return ()
        product = self.spec.product_of(layer)
        if product.id not in self.shut:
            named = ((self.job.id, self.job.climate), (product.id, product.climate))
            climates = [(name, climate) for name, climate in named if climate is not None]
            begun = [(self._minute(hour.begins), hour) for hour in self.stated.air]
            work = self._calendar().hours
            at_work = {hour for begin, end in work for hour in range(begin // HOUR, -(-end // HOUR))}
            found = [
                _Shut((begin, begin + HOUR), why)
                for begin, hour in begun
                if begin // HOUR in at_work and (why := not_allowed(hour, climates, self.moist))
            ]
            ends = begun[-1][0] + HOUR
            found.append(
                _Shut((ends, _DAYS * _DAY), f"the air is not stated from {show_moment(self._moment(ends))} on")
            )
            self.shut[product.id] = tuple(found)
        return self.shut[product.id]

    def _coat_within(self, group: _Group) -> Minutes | None:
        within = [
            int(preparation.coat_within.to("min"))
            for item in self.job.items
            if item.id in group.items
            and (preparation := self.spec.preparation_of(self.job, item)) is not None
            and preparation.coat_within is not None
        ]
        return min(within, default=None)

    def _sanded(self, layer: Layer) -> bool:
        return layer.abraded_with is not None or layer.sanding_removes is not None

    def _interval(self, system: System, below: Layer, above: Layer) -> tuple[_Bound, _Bound]:
        @cache
        def least(hour: Hour) -> Minutes | None:
            found = wait_between(system, below, above, self.spec, hour.air, hour.humidity).wait
            return _up(found) if isinstance(found, Quantity) else None

        @cache
        def most(hour: Hour) -> Minutes | None:
            found = wait_between(system, below, above, self.spec, hour.air, hour.humidity).longest
            if isinstance(found, NotKnown):
                self.unstated.append(f"the maximum overcoating interval of {below.id} is not stated for {hour.air}")
                return 0
            return None if found is None else int(found.to("min"))

        @cache
        def first(end: Minutes) -> Minutes | None:
            return self.cold.first_after(end, least)

        @cache
        def last(end: Minutes) -> Minutes | None:
            return self.warm.last_after(end, most)

        return first, last

    def _sandable(self, layer: Layer, first: _Bound) -> _Bound:
        """Sanding begins once the film is sandable, and ends no earlier than the next coat may go on."""
        product = self.spec.product_of(layer)
        sanding = self._time(Work.SANDING, layer)
        takes = _on_grid(sanding.time) if sanding is not None else 0

        @cache
        def needed(hour: Hour) -> Minutes | None:
            found = sandable_in(product, hour.air)
            return _up(found) if isinstance(found, Quantity) else None

        @cache
        def begins(end: Minutes) -> Minutes | None:
            coat = first(end) if first is not None else end
            if not product.sandable_after:
                return coat
            sandable = self.cold.first_after(end, needed)
            return None if coat is None or sandable is None else max(sandable, coat - takes)

        return begins

    def _handling(self, system: System) -> Callable[[Minutes], Minutes | None]:
        return self._reached(system, DryingStage.HANDLING, system.handle_after)

    def _reached(
        self, system: System, stage: DryingStage, stated: Quantity | None
    ) -> Callable[[Minutes], Minutes | None]:
        """When every coat has reached a stage, counted from the last one, and no earlier than the system states; the system's own
        word where a product does not state the stage for that air, None where nobody does.
        """
        key = (system.id, stage, stated)
        if key not in self.stages:
            self.stages[key] = self._reaching(system, stage, stated)
        return self.stages[key]

    def _reaching(
        self, system: System, stage: DryingStage, stated: Quantity | None
    ) -> Callable[[Minutes], Minutes | None]:
        products = {layer.id: self.spec.product_of(layer) for layer in system.layers}
        own = 0 if stated is None else _up(stated)

        @cache
        def needed(hour: Hour) -> Minutes | None:
            times = [reaches(product, stage, hour.air) for product in products.values()]
            known = [time for time in times if isinstance(time, Quantity)]
            return max(_up(time) for time in known) if len(known) == len(times) else None

        @cache
        def reached(end: Minutes) -> Minutes | None:
            gathered = self.cold.gathered_after(end, needed)
            if gathered is None:
                return None if stated is None else end + own
            return max(gathered, end + own)

        return reached

    # --- calendar ---------------------------------------------------------------------------------------------------------

    def _works_on(self, day: date) -> bool:
        if day in self.stated.days_off:
            return False
        return any(_WEEK[day.weekday()] in entry.days for entry in self.stated.working_hours)

    def _calendar(self) -> Calendar:
        hours: list[tuple[Minutes, Minutes]] = []
        for begins, ends in working_hours(self.stated, self.origin.date(), _DAYS):
            begin, end = self._minute(max(begins, self.start)), self._minute(ends)
            if begin < end:
                hours.append((begin, end))
        return Calendar(tuple(sorted(hours)), GRID, _DAYS * _DAY)

    def _minute(self, moment: datetime) -> Minutes:
        return int((moment - self.origin).total_seconds() // 60)

    def _on_the_safe_side(self, minute: Minutes | None) -> datetime | None:
        """The next moment on the grid: nobody waits for an odd minute."""
        return None if minute is None else self._moment(-(-minute // GRID) * GRID)

    def _moment(self, minute: Minutes) -> datetime:
        return self.origin + timedelta(minutes=minute)

    # --- answers ----------------------------------------------------------------------------------------------------------

    def _plan(
        self,
        laid: tuple[Laid, ...],
        named: dict[str, tuple[tuple[Work, Layer | None], ...]],
        groups: dict[str, _Group],
    ) -> Plan:
        steps: list[Step] = []
        done: list[Done] = []
        for one in laid:
            system = groups[one.load.id].system
            beside = zip(named[one.load.id], one.tasks, (*one.tasks[1:], None), strict=True)
            own = [
                self._step(
                    one, placed, work, layer, system, after, self._why_later(one, place, named[one.load.id], laid)
                )
                for place, ((work, layer), placed, after) in enumerate(beside)
            ]
            steps.extend(own)
            last = max(step.end for step in own if step.work is Work.APPLICATION)
            end = self._minute(last)
            handled, service, cured = (
                self._reached(system, stage, stated)(end)
                for stage, stated in (
                    (DryingStage.HANDLING, system.handle_after),
                    (DryingStage.HANDLING, _later(system.handle_after, system.service_after)),
                    (DryingStage.FULLY_CURED, None),
                )
            )
            back = None if service is None or system.service_after is None else max(service, self._minute(own[-1].end))
            done.append(Done(one.load.id, last, *(self._on_the_safe_side(at) for at in (handled, back, cured))))
        steps.sort(key=lambda step: (step.start, step.load))
        bays = max((one.bay for one in laid), default=1)
        return Plan(self.start, bays, tuple(steps), tuple(done), tuple(_readings(steps)), self._packs(steps, groups))

    def _step(
        self,
        one: Laid,
        placed: Placed,
        work: Work,
        layer: Layer | None,
        system: System,
        after: Placed | None,
        held: str,
    ) -> Step:
        expires = None if placed.expires is None else self._moment(placed.expires)
        slack = None if placed.expires is None or after is None else timedelta(minutes=placed.expires - after.start)
        start, end, latest = (self._moment(minute) for minute in (placed.start, placed.end, placed.latest))
        return Step(one.load.id, one.bay, work, system, layer, start, end, latest, expires, slack, held)

    def _why_later(self, one: Laid, place: int, steps: _Steps, laid: tuple[Laid, ...]) -> str:
        """What a step waits for since the one before it ended; empty where it begins then."""
        placed = one.tasks[place]
        opens: Minutes | None = self._minute(self.start)
        told: list[str] = []
        if place:
            before = one.tasks[place - 1]
            opens = before.end if before.task.first is None else before.task.first(before.end)
            if opens is not None and opens > before.end:
                told.append(f"{_waited_for(steps[place - 1], steps[place])}, until {show_moment(self._moment(opens))}")
        if opens is not None:
            layer = steps[place][1]
            shut = self._shut(layer) if layer is not None and placed.task.shut else ()
            reasons = [(each.hours, each.why) for each in shut]
            told.append(held_up(one, placed, opens, laid, self._calendar(), self.stated.painters or 1, reasons))
            off = [
                day
                for day in self.stated.days_off
                if self._moment(opens).date() <= day < self._moment(placed.start).date()
            ]
            if told[-1] and off:
                told.append(f"no work on {', '.join(show_day(day) for day in off)}")
        return "; ".join(each for each in told if each)

    def _packs(self, steps: list[Step], groups: dict[str, _Group]) -> tuple[tuple[date, str, int], ...]:
        """Packs by the day of their coat: those of the coat in proportion to the area of the load, rounded up."""
        figures = quantities(self.job, self.spec)
        found: list[tuple[date, str, int]] = []
        for step in steps:
            if step.work is not Work.APPLICATION or step.layer is None:
                continue
            packs = figures.layer_packs.get((step.system.id, step.layer.id))
            if packs is None or step.layer.product is None:
                continue
            coated = [item.id for item in self.job.items if self.spec.system_of(self.job, item) == step.system]
            areas = {name: figures.areas[name].number for name in coated if name in figures.areas}
            own = sum((areas.get(name, 0) for name in groups[step.load].items), start=packs.number * 0)
            whole = sum(areas.values(), start=packs.number * 0)
            share = packs.number * own / whole if whole else packs.number
            found.append((step.start.date(), step.layer.product, -(-share.numerator // share.denominator)))
        return tuple(found)

    def _conflict(self, met: Conflict, named: dict[str, tuple[tuple[Work, Layer | None], ...]]) -> NoPlan:
        load, _, number = met.after.id.rpartition(".")
        after = _spoken(*named[load][int(number)])
        air = self._air_of(named[load][int(number)])
        if met.before is None:
            why = f"no working time is long enough for {after}{air}"
            ways = ("longer working hours, or a shorter step", "more painters")
            return NoPlan(load, "", after, why, (*((_AIR,) if air else ()), *ways))
        before = _spoken(*named[load][int(met.before.id.rpartition(".")[2])])
        if self.unstated:
            return NoPlan(load, before, after, self.unstated[0], _STATED)
        if met.first is None:
            why = f"how long {before} has to dry is not stated for the ambient conditions of the job, or never passes in them"
            return NoPlan(load, before, after, why, _STATED)
        opens = self._moment(met.first)
        closes = "" if met.last is None else f" and no later than {show_moment(self._moment(met.last))}"
        air = self._air_of(named[load][int(number)], met.first)
        why = f"after {before}, {after} may begin from {show_moment(opens)} on{closes}, and no working time fits{air}"
        return NoPlan(load, before, after, why, (*((_AIR,) if air else ()), *_WAYS))

    def _air_of(self, step: tuple[Work, Layer | None], opens: Minutes = 0) -> str:
        """What the stated air keeps a coat from, from the moment on at which it might begin."""
        work, layer = step
        shut = self._shut(layer) if layer is not None and work is Work.APPLICATION else ()
        met = next((each for each in shut if each.hours[1] > opens), None)
        return "" if met is None else f" ({show_moment(self._moment(max(met.hours[0], opens)))}: {met.why})"


_AIR = "air within the limits while the coat goes on, or the air stated for more hours"
_STATED = ("air within what the product states", "an interval stated by the product for that air")
_WAYS = (
    "abrade the coat below, which lifts the maximum interval",
    "a bay whose air gives another interval",
    "another start of the work or of the day",
    "work on the day off",
    "another product",
)

_Bound = Callable[[Minutes], Minutes | None] | None
_Steps = tuple[tuple[Work, Layer | None], ...]


def _later(one: Quantity | None, other: Quantity | None) -> Quantity | None:
    return max((time for time in (one, other) if time is not None), default=None)


def _readings(steps: list[Step]) -> Iterator[datetime]:
    """Before every coat, and every four hours while it goes on."""
    moments: set[datetime] = set()
    for step in steps:
        if step.work is Work.APPLICATION:
            moment = step.start
            while moment < step.end:
                moments.add(moment)
                moment += _READINGS
    yield from sorted(moments)


def _spoken(work: Work, layer: Layer | None) -> str:
    return f"{work.value} of {layer.id}" if layer is not None else work.value


def _waited_for(before: tuple[Work, Layer | None], after: tuple[Work, Layer | None]) -> str:
    """What passes between the end of a step and the first moment of the next."""
    work, layer = before
    if work is Work.PREPARATION:
        return "for the parts to dry"
    if layer is None:
        return "for the step before it"
    if after[0] is Work.SANDING:
        return f"for {layer.id} to become sandable"
    if after[0] is Work.ASSEMBLY:
        return "for the coats to dry until the parts may be handled"
    return f"for the overcoating interval of {layer.id}"


def spoken_step(step: Step) -> str:
    """What is done in a step, with its coat."""
    return _spoken(step.work, step.layer)


def _on_grid(time: Quantity) -> Minutes:
    return -(-_up(time) // GRID) * GRID


def _up(time: Quantity) -> Minutes:
    minutes = time.to("min")
    return -(-minutes.numerator // minutes.denominator)
