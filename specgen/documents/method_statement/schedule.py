"""The plan of a job as a section of its method statement: steps, dates, climate readings, packs by day, and the plan as bars.

Only where the job states a start; what stands in the way of a plan is a finding.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from datetime import date, datetime, timedelta

from specgen.documents.parts.coats import coat_name, numbered
from specgen.documents.parts.tables import Column, TableView, table_view
from specgen.documents.parts.wording import Words
from specgen.facts.job.plan import Done, Plan, Step
from specgen.facts.job.schedule import schedule
from specgen.facts.job.schedule_stated import closed_hours
from specgen.figures.schedule_bars import Axis, Bar, schedule_bars
from specgen.model.job import Job
from specgen.model.schedule import Weekday
from specgen.model.spec import Spec
from specgen.units.locale import N_

_DAYS = (N_("Mon"), N_("Tue"), N_("Wed"), N_("Thu"), N_("Fri"), N_("Sat"), N_("Sun"))


@dataclass(frozen=True, slots=True, kw_only=True)
class ScheduleView:
    """`drawing` is SVG; `readings` and `hours` are finished sentences."""

    steps: TableView
    dates: TableView
    packs: TableView | None
    readings: str
    hours: str
    drawing: str
    caption: str


def schedule_view(job: Job, spec: Spec, words: Words) -> ScheduleView | None:
    """None where the job states no start, or no plan was found for it."""
    if job.schedule is None or job.schedule.starts is None:
        return None
    plan = schedule(job, spec)
    if not isinstance(plan, Plan):
        return None
    caption = words(
        "The plan: full bars cannot begin later without a later end, lines run to the last start of the next step, "
        "shaded times are without work."
    )
    return ScheduleView(
        steps=_steps(plan, words),
        dates=_dates(plan, words),
        packs=_packs(plan, spec, words) if plan.packs else None,
        readings=", ".join(_moment(moment, words) for moment in plan.readings),
        hours="; ".join(_hours(job, words)),
        drawing=schedule_bars(tuple(_bars(plan, words)), _axis(plan, job, words), caption),
        caption=caption,
    )


def _named(step: Step, words: Words) -> str:
    coats = (coat_name(number, layer, words) for number, layer in numbered(step.system) if layer == step.layer)
    return ", ".join((words.word(step.work), *coats))


def _steps(plan: Plan, words: Words) -> TableView:
    several = len(plan.done) > 1
    wide = "w-15" if several else "w-20"  # a moment in one line where there is room
    columns = [
        Column(words("Load"), "w-15"),
        Column(words("Step")),
        Column(words("Bay"), "w-5"),
        Column(words("Begins"), wide),
        Column(words("Ends"), wide),
        Column(words("Begins no later than"), wide),
        Column(words("Next step begins by"), wide),
    ]
    rows = [
        (
            step.load if several else "",
            _named(step, words),
            str(step.bay) if plan.bays > 1 else "",
            _moment(step.start, words),
            _moment(step.end, words),
            _moment(step.latest_start, words),
            _moment(step.expires, words) if step.expires is not None else "–",
        )
        for step in plan.steps
    ]
    return table_view(words("Steps, at the earliest"), columns, rows)


def _dates(plan: Plan, words: Words) -> TableView:
    columns = [
        Column(words("Load"), "w-25"),
        Column(words("Last coat done")),
        Column(words("May be handled")),
        Column(words("Returns to service")),
        Column(words("Fully cured")),
    ]
    several = len(plan.done) > 1
    rows = [_date_row(done, several, words) for done in plan.done]
    return table_view(words("When the parts are ready"), columns, rows)


def _date_row(done: Done, several: bool, words: Words) -> tuple[str, ...]:
    told = (done.last_coat, done.handling, done.service, done.cured)
    moments = (words("not stated for this air") if when is None else _moment(when, words) for when in told)
    return (done.load if several else "", *moments)


def _packs(plan: Plan, spec: Spec, words: Words) -> TableView:
    columns = [
        Column(words("Day"), "w-20"),
        Column(words("Product")),
        Column(words("Packs required"), "w-15", numeric=True),
    ]
    rows = [(_day(day, words), spec.products[product].name, str(number)) for day, product, number in plan.packs]
    return table_view(words("Packs by day"), columns, rows)


def _hours(job: Job, words: Words) -> Iterator[str]:
    if job.schedule is None:
        return
    for entry in job.schedule.working_hours:
        text = words("{days}, {begins} to {ends}")
        yield text.format(days=_days(entry.days, words), begins=f"{entry.begins:%H:%M}", ends=f"{entry.ends:%H:%M}")
    painters, bays = job.schedule.painters or 1, job.schedule.bays or 1
    yield words.plural("{number} painter", "{number} painters", painters)
    yield words.plural("{number} bay", "{number} bays", bays)
    for day in job.schedule.days_off:
        yield words("no work on {day}").format(day=_day(day, words))


def _days(days: Sequence[Weekday], words: Words) -> str:
    """`Monday to Friday`, where more than two follow one another, else each by its name."""
    week = list(Weekday)
    numbers = [week.index(day) for day in days]
    if len(days) > 2 and numbers == list(range(numbers[0], numbers[0] + len(days))):
        return words("{first} to {last}").format(first=words.word(days[0]), last=words.word(days[-1]))
    return ", ".join(words.word(day) for day in days)


def _bars(plan: Plan, words: Words) -> Iterator[Bar]:
    for step in plan.steps:
        until = None if step.expires is None else _minutes(plan, step.expires)
        label = _named(step, words) if len(plan.done) == 1 else f"{step.load}: {_named(step, words)}"
        yield Bar(label, _minutes(plan, step.start), _minutes(plan, step.end), until, step.critical)


def _axis(plan: Plan, job: Job, words: Words) -> Axis:
    last = max(step.end for step in plan.steps)
    midnight = plan.start.replace(hour=0, minute=0)
    days = [midnight + timedelta(days=number) for number in range((last - midnight).days + 1)]
    named = tuple((max(_minutes(plan, day), 0), (words(_DAYS[day.weekday()]), f"{day:%m-%d}")) for day in days)
    closed = tuple((_minutes(plan, begin), _minutes(plan, end)) for begin, end in closed_hours(job, plan.start, last))
    return Axis(_minutes(plan, last), named, closed)


def _minutes(plan: Plan, moment: datetime) -> int:
    return int((moment - plan.start).total_seconds() // 60)


def _moment(moment: datetime, words: Words) -> str:
    return f"{_day(moment, words)} {moment:%H:%M}"


def _day(day: date, words: Words) -> str:
    return f"{words(_DAYS[day.weekday()])} {day:%Y-%m-%d}"
