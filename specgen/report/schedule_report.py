"""A plan of a job as text for the screen and as JSON for other programs. Called by `specgen schedule`.

Neither releases anything: a plan is arithmetic on what the sources state.
"""

from __future__ import annotations

import json
from collections.abc import Iterator, Sequence
from datetime import datetime, timedelta
from typing import Any

from specgen.facts.job.plan import GRID, Done, Fault, NoPlan, Plan, Step, spoken_step
from specgen.findings import Finding
from specgen.model.schedule import Work
from specgen.source.characters import printable
from specgen.units.moments import show_day, show_moment

SCHEMA_VERSION = 1
ASSUMED = (
    f"Steps begin on the grid of {GRID} minutes and are not interrupted; a load keeps its bay from its first coat until it may be "
    "handled; minimum intervals are taken at the coldest air, maximum intervals at the warmest; an interval that drier air lengthens is an "
    "estimate, and so is drying added up over hours of changing air; cure goes on at night. Where the air is stated by the hour, no coat "
    "is planned in an hour outside the limits of the job and its product; an hour without its humidity is held against the temperatures."
)
RELEASE = (
    "The release of each step, of the parts and of the vehicle is the responsible person's, on what is found then."
)


def stopped(errors: Sequence[Finding]) -> str:
    """What goes before a plan of sources with errors; empty where there are none."""
    if not errors:
        return ""
    lines = ["The sources have errors: nothing is worked to this plan before they are put right.", ""]
    lines += [f"  {error.place}: {error.id} {error.what}" for error in errors]
    return "\n".join(printable(line) for line in lines) + "\n\n"


def as_text(job: str, plan: Plan) -> str:
    """Dates of each load, steps with what they wait for and what is left of an interval, climate readings, packs by day."""
    lines = [f"{job}: plan from {show_moment(plan.start)}, {plan.bays} bay{'s' if plan.bays > 1 else ''}", ""]
    for done in plan.done:
        lines += [f"{done.load}", *(f"  {what}: {when}" for what, when in _dates(done)), ""]
    lines += ["Steps", *(f"  {line}" for step in plan.steps for line in _lines(step))]
    if plan.readings:
        lines += ["", "Read the ambient conditions at the part"]
        lines += [f"  {show_moment(moment)}" for moment in plan.readings]
    if plan.packs:
        lines += ["", "Packs needed"]
        lines += [f"  {show_day(day)}: {packs} of {product}" for day, product, packs in plan.packs]
    return "\n".join(printable(line) for line in [*lines, "", ASSUMED, RELEASE]) + "\n"


def none_as_text(job: str, found: NoPlan) -> str:
    """The two steps that conflict, and what would resolve it."""
    lines = [
        f"{job}: no plan found for {found.load}, which does not mean that there is none",
        f"  {found.why}",
        "",
        "What would help",
    ]
    return "\n".join(printable(line) for line in [*lines, *(f"  {way}" for way in found.resolves)]) + "\n"


def faults_as_text(job: str, faults: tuple[tuple[str, Fault], ...]) -> str:
    """What is missing or wrong, at its place and path."""
    lines = [f"{job}: nothing is planned"]
    for place, fault in faults:
        lines += [f"  {place}: {fault.what}", f"    at {'.'.join(fault.at)}: {fault.put_right}"]
    return "\n".join(printable(line) for line in lines) + "\n"


def as_json(job: str, found: Plan | NoPlan | tuple[Fault, ...], errors: Sequence[Finding] = ()) -> str:
    """Under keys that stay; a change of their meaning raises `SCHEMA_VERSION`."""
    whole: dict[str, Any] = {"schema_version": SCHEMA_VERSION, "job": job, "found": isinstance(found, Plan)}
    if isinstance(found, Plan):
        whole |= {
            "start": found.start.isoformat(),
            "bays": found.bays,
            "steps": [_step(step) for step in found.steps],
            "loads": [{"load": done.load, **dict(_dates(done, iso=True))} for done in found.done],
            "climate_readings": [moment.isoformat() for moment in found.readings],
            "packs": [
                {"day": day.isoformat(), "product": product, "packs": packs} for day, product, packs in found.packs
            ],
            "assumed": ASSUMED,
            "release": RELEASE,
        }
    elif isinstance(found, NoPlan):
        whole |= {"load": found.load, "before": found.before, "after": found.after, "why": found.why}
        whole["what_would_help"] = list(found.resolves)
    else:
        whole["faults"] = [
            {"path": ".".join(fault.at), "what": fault.what, "put_right": fault.put_right} for fault in found
        ]
    whole["errors"] = [{"rule": error.id, "place": str(error.place), "what": error.what} for error in errors]
    return json.dumps(whole, ensure_ascii=False, indent=2) + "\n"


def _lines(step: Step) -> Iterator[str]:
    told = f"{show_moment(step.start)} to {_until(step)}  {step.load}, {spoken_step(step)}"
    if step.work in (Work.APPLICATION, Work.SANDING):
        told += f", bay {step.bay}"
    more = "; on the critical path" if step.critical else f"; may begin as late as {show_moment(step.latest_start)}"
    if step.slack is not None:
        more += f"; {_span(step.slack)} left of the interval after it"
    yield told + more
    if step.held_up:
        yield f"    waits: {step.held_up}"


def _until(step: Step) -> str:
    return f"{step.end:%H:%M}" if step.end.date() == step.start.date() else f"{show_moment(step.end)}"


def _dates(done: Done, *, iso: bool = False) -> Iterator[tuple[str, str]]:
    for what, when in (
        ("last coat", done.last_coat),
        ("may be handled", done.handling),
        ("returns to service", done.service),
        ("fully cured", done.cured),
    ):
        yield what, "not stated for this air" if when is None else _moment(when, iso=iso)


def _moment(when: datetime, *, iso: bool) -> str:
    return when.isoformat() if iso else f"{show_moment(when)}"


def _step(step: Step) -> dict[str, Any]:
    return {
        "load": step.load,
        "bay": step.bay,
        "step": spoken_step(step),
        "start": step.start.isoformat(),
        "end": step.end.isoformat(),
        "latest_start": step.latest_start.isoformat(),
        "critical": step.critical,
        "held_up": step.held_up or None,
        "next_begins_by": None if step.expires is None else step.expires.isoformat(),
        "minutes_left": None if step.slack is None else int(step.slack.total_seconds() // 60),
    }


def _span(time: timedelta) -> str:
    minutes = int(time.total_seconds() // 60)
    hours, minutes = divmod(minutes, 60)
    days, hours = divmod(hours, 24)
    parts = ((days, "d"), (hours, "h"), (minutes, "min"))
    return " ".join(f"{number} {unit}" for number, unit in parts if number) or "nothing"
