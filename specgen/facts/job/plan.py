"""A plan of a job as it is told: steps, dates of each load, what stands in its way. Made by `schedule`, read by reports and pages."""

from __future__ import annotations

from datetime import date, datetime, timedelta
from typing import NamedTuple

from specgen.model.schedule import Work
from specgen.model.system import Layer, System
from specgen.model.walk import Path
from specgen.trade.timetable import Minutes

GRID: Minutes = 15
"""Minutes: every step begins on the quarter of an hour."""


class Fault(NamedTuple):
    """What stands in the way of a plan, at its path in the sources, and what to do."""

    at: Path
    what: str
    put_right: str


class Step(NamedTuple):
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


class Done(NamedTuple):
    """When one load may be handled, goes back into service and is fully cured; None where it is not stated for that air."""

    load: str
    last_coat: datetime
    handling: datetime | None
    service: datetime | None
    cured: datetime | None


class Plan(NamedTuple):
    """Steps in the order they begin; dates of each load; when the climate is read; packs of each (product, variant) by day."""

    start: datetime
    bays: int
    steps: tuple[Step, ...]
    done: tuple[Done, ...]
    readings: tuple[datetime, ...]
    packs: tuple[tuple[date, str, int], ...]


class NoPlan(NamedTuple):
    """No plan was found; that does not mean that there is none. The two steps that conflict, and what would resolve it."""

    load: str
    before: str
    after: str
    why: str
    resolves: tuple[str, ...]


Answer = Plan | NoPlan | tuple[Fault, ...]


def spoken(work: Work, layer: Layer | None) -> str:
    return f"{work.value} of {layer.id}" if layer is not None else work.value


def spoken_step(step: Step) -> str:
    """What is done in a step, with its coat."""
    return spoken(step.work, step.layer)
