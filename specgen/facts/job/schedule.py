"""The plan of a job: when each step begins and ends, what waits for what, when the parts may be handled and return to service.

From working hours, people, bays and the times of the steps as the job states them, the intervals of its coats and its air. A
load keeps its bay from its first coat until it may be handled. Times of steps are rounded up to the grid. Nothing is guessed:
what is not stated is told with its place. A plan is arithmetic; whether work may begin is for the person responsible. Asked by
the command on the schedule and by the method statement.
"""

from __future__ import annotations

from collections.abc import Callable
from datetime import datetime, timedelta
from functools import cache
from typing import NamedTuple

from specgen.facts.job.air_allows import moist, not_allowed
from specgen.facts.job.held_up import held_up
from specgen.facts.job.hourly_air import HOUR, Hour
from specgen.facts.job.plan import GRID, Answer, Done, Fault, NoPlan, Plan, Step, spoken
from specgen.facts.job.plan_needs import packs_by_day, readings_of
from specgen.facts.job.schedule_stated import DAY, DAYS, Group, Stated
from specgen.facts.layer.sanding import sanded
from specgen.facts.layer.waits import reaches, sandable_in, wait_between
from specgen.facts.memo import memoised
from specgen.model.drying import DryingStage
from specgen.model.job import Job
from specgen.model.schedule import Schedule, Work
from specgen.model.spec import Spec
from specgen.model.system import Layer, System
from specgen.model.walk import Path
from specgen.trade.known import NotKnown
from specgen.trade.timetable import Conflict, Laid, Load, Minutes, Placed, Task, timetable
from specgen.units.moments import show_day, show_moment
from specgen.units.quantity import Quantity

_YEARS = (1970, 2199)


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


class _Shut(NamedTuple):
    """Minutes in which a coat may not go on, and which limit its air misses."""

    hours: tuple[Minutes, Minutes]
    why: str


class _Planner(Stated):
    """One plan of one job."""

    def __init__(self, job: Job, spec: Spec, stated: Schedule, start: datetime) -> None:
        super().__init__(job, spec, stated, start)
        self.unstated: list[str] = []
        # loads with one system wait alike, so that what was worked out for one holds for the next
        self.intervals: dict[tuple[str, str], tuple[_Bound, _Bound]] = {}
        self.shut: dict[str, tuple[_Shut, ...]] = {}
        self.moist = cache(moist)
        self.stages: dict[tuple[str, DryingStage, Quantity | None], Callable[[Minutes], Minutes | None]] = {}

    def answer(self) -> Answer:
        self.look_for_faults()
        air = self.air()
        groups = self.groups()
        if air is None or self.faults:
            return tuple(self.faults)
        self.cold, self.warm = air
        loads = [self._load(group) for group in groups]
        if self.faults:
            return tuple(dict.fromkeys(self.faults))
        painters, bays = self.stated.painters or 1, self.stated.bays or 1
        laid = timetable([load for load, _ in loads], self.calendar(), painters, bays)
        named = {load.id: steps for load, steps in loads}
        if isinstance(laid, Conflict):
            return self._conflict(laid, named)
        return self._plan(laid, named, {group.id: group for group in groups})

    def _load(self, group: Group) -> tuple[Load, tuple[tuple[Work, Layer | None], ...]]:
        system = group.system
        tasks: list[Task] = []
        steps: list[tuple[Work, Layer | None]] = []

        def add(
            work: Work, layer: Layer | None, first: _Bound = None, last: _Bound = None, *, in_bay: bool = True
        ) -> None:
            entry = self.time_of(work, layer)
            if entry is None:
                what = f"the time of {spoken(work, layer)} is not stated"
                self.fault(("times",), what, "add it to the times of the schedule")
                return
            shut = tuple(
                one.hours for one in (self._shut(layer) if layer is not None and work is Work.APPLICATION else ())
            )
            tasks.append(
                Task(f"{group.id}.{len(tasks)}", _on_grid(entry.time), entry.painters or 1, in_bay, first, last, shut)
            )
            steps.append((work, layer))

        preparation = self.time_of(Work.PREPARATION)
        if preparation is not None:
            within = self._coat_within(group)
            dries = 0 if preparation.dries_for is None else _up(preparation.dries_for)
            last = None if within is None else lambda end: end + within
            add(Work.PREPARATION, None, lambda end: end + dries, last, in_bay=False)
        for below, above in zip(system.layers, (*system.layers[1:], None), strict=True):
            if above is None:
                assembly = self.time_of(Work.ASSEMBLY) is not None
                add(Work.APPLICATION, below, self._handling(system) if assembly else None)
            else:
                pair = (system.id, below.id)
                if pair not in self.intervals:
                    first, last = self._interval(system, below, above)
                    self.intervals[pair] = (self._sandable(below, first), None) if sanded(below) else (first, last)
                add(Work.APPLICATION, below, *self.intervals[pair])
                if sanded(below):
                    add(Work.SANDING, below)
        if self.time_of(Work.ASSEMBLY) is not None:
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
            begun = [(self.minute(hour.begins), hour) for hour in self.stated.air]
            work = self.calendar().hours
            at_work = {hour for begin, end in work for hour in range(begin // HOUR, -(-end // HOUR))}
            found = [
                _Shut((begin, begin + HOUR), why)
                for begin, hour in begun
                if begin // HOUR in at_work and (why := not_allowed(hour, climates, self.moist))
            ]
            ends = begun[-1][0] + HOUR
            found.append(_Shut((ends, DAYS * DAY), f"the air is not stated from {show_moment(self.moment(ends))} on"))
            self.shut[product.id] = tuple(found)
        return self.shut[product.id]

    def _coat_within(self, group: Group) -> Minutes | None:
        within = [
            int(preparation.coat_within.to("min"))
            for item in self.job.items
            if item.id in group.items
            and (preparation := self.spec.preparation_of(self.job, item)) is not None
            and preparation.coat_within is not None
        ]
        return min(within, default=None)

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
        sanding = self.time_of(Work.SANDING, layer)
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

    # --- answers ----------------------------------------------------------------------------------------------------------

    def _plan(
        self,
        laid: tuple[Laid, ...],
        named: dict[str, tuple[tuple[Work, Layer | None], ...]],
        groups: dict[str, Group],
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
            end = self.minute(last)
            handled, service, cured = (
                self._reached(system, stage, stated)(end)
                for stage, stated in (
                    (DryingStage.HANDLING, system.handle_after),
                    (DryingStage.HANDLING, _later(system.handle_after, system.service_after)),
                    (DryingStage.FULLY_CURED, None),
                )
            )
            back = None if service is None or system.service_after is None else max(service, self.minute(own[-1].end))
            done.append(Done(one.load.id, last, *(self.on_the_safe_side(at) for at in (handled, back, cured))))
        steps.sort(key=lambda step: (step.start, step.load))
        bays = max((one.bay for one in laid), default=1)
        return Plan(
            self.start,
            bays,
            tuple(steps),
            tuple(done),
            tuple(readings_of(steps)),
            packs_by_day(self.job, self.spec, steps, groups),
        )

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
        expires = None if placed.expires is None else self.moment(placed.expires)
        slack = None if placed.expires is None or after is None else timedelta(minutes=placed.expires - after.start)
        start, end, latest = (self.moment(minute) for minute in (placed.start, placed.end, placed.latest))
        return Step(one.load.id, one.bay, work, system, layer, start, end, latest, expires, slack, held)

    def _why_later(self, one: Laid, place: int, steps: _Steps, laid: tuple[Laid, ...]) -> str:
        """What a step waits for since the one before it ended; empty where it begins then."""
        placed = one.tasks[place]
        opens: Minutes | None = self.minute(self.start)
        told: list[str] = []
        if place:
            before = one.tasks[place - 1]
            opens = before.end if before.task.first is None else before.task.first(before.end)
            if opens is not None and opens > before.end:
                told.append(f"{_waited_for(steps[place - 1], steps[place])}, until {show_moment(self.moment(opens))}")
        if opens is not None:
            layer = steps[place][1]
            shut = self._shut(layer) if layer is not None and placed.task.shut else ()
            reasons = [(each.hours, each.why) for each in shut]
            told.append(held_up(one, placed, opens, laid, self.calendar(), self.stated.painters or 1, reasons))
            off = [
                day
                for day in self.stated.days_off
                if self.moment(opens).date() <= day < self.moment(placed.start).date()
            ]
            if told[-1] and off:
                told.append(f"no work on {', '.join(show_day(day) for day in off)}")
        return "; ".join(each for each in told if each)

    def _conflict(self, met: Conflict, named: dict[str, tuple[tuple[Work, Layer | None], ...]]) -> NoPlan:
        load, _, number = met.after.id.rpartition(".")
        after = spoken(*named[load][int(number)])
        air = self._air_of(named[load][int(number)])
        if met.before is None:
            why = f"no working time is long enough for {after}{air}"
            ways = ("longer working hours, or a shorter step", "more painters")
            return NoPlan(load, "", after, why, (*((_AIR,) if air else ()), *ways))
        before = spoken(*named[load][int(met.before.id.rpartition(".")[2])])
        if self.unstated:
            return NoPlan(load, before, after, self.unstated[0], _STATED)
        if met.first is None:
            why = f"how long {before} has to dry is not stated for the ambient conditions of the job, or never passes in them"
            return NoPlan(load, before, after, why, _STATED)
        opens = self.moment(met.first)
        closes = "" if met.last is None else f" and no later than {show_moment(self.moment(met.last))}"
        air = self._air_of(named[load][int(number)], met.first)
        why = f"after {before}, {after} may begin from {show_moment(opens)} on{closes}, and no working time fits{air}"
        return NoPlan(load, before, after, why, (*((_AIR,) if air else ()), *_WAYS))

    def _air_of(self, step: tuple[Work, Layer | None], opens: Minutes = 0) -> str:
        """What the stated air keeps a coat from, from the moment on at which it might begin."""
        work, layer = step
        shut = self._shut(layer) if layer is not None and work is Work.APPLICATION else ()
        met = next((each for each in shut if each.hours[1] > opens), None)
        return "" if met is None else f" ({show_moment(self.moment(max(met.hours[0], opens)))}: {met.why})"


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


def _on_grid(time: Quantity) -> Minutes:
    return -(-_up(time) // GRID) * GRID


def _up(time: Quantity) -> Minutes:
    minutes = time.to("min")
    return -(-minutes.numerator // minutes.denominator)
