"""A plan as iCalendar (RFC 5545), for the calendar of whoever does the work. Called by `specgen schedule --format ics`.

Times are local, without a zone, as they stand in the sources. Equal plans give equal bytes.
"""

from __future__ import annotations

from datetime import datetime
from hashlib import sha256

from icalendar import Calendar, Event

from specgen.facts.job.plan import Plan, spoken_step
from specgen.report.schedule_report import RELEASE
from specgen.source.characters import printable


def as_calendar(job: str, plan: Plan) -> str:
    """One event for each step, and one for each date of a load."""
    calendar = Calendar()
    calendar.add("prodid", "-//specgen//schedule//EN")
    calendar.add("version", "2.0")
    for step in plan.steps:
        calendar.add_component(
            _event(job, f"{step.load}: {spoken_step(step)}, bay {step.bay}", step.start, step.end, plan)
        )
    for done in plan.done:
        for what, when in (
            ("may be handled", done.handling),
            ("returns to service", done.service),
            ("fully cured", done.cured),
        ):
            if when is not None:
                calendar.add_component(_event(job, f"{done.load}: {what}", when, when, plan))
    text: bytes = calendar.to_ical()
    return text.decode("utf-8")


def _event(job: str, what: str, start: datetime, end: datetime, plan: Plan) -> Event:
    event = Event()
    summary = printable(f"{job}: {what}")
    event.add("uid", sha256(f"{summary} {start.isoformat()}".encode()).hexdigest()[:32])
    event.add("dtstamp", plan.start)
    event.add("dtstart", start)
    event.add("dtend", end)
    event.add("summary", summary)
    event.add("description", RELEASE)
    return event
