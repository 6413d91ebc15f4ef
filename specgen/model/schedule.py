"""When a job is done: start, working hours, people and bays, what each step takes, and the air hour by hour if it is known."""

from __future__ import annotations

from enum import StrEnum
from typing import Annotated

from specgen.model.declaring import Concern, Polarity, entries, leaf
from specgen.model.field_types import (
    Duration,
    Humidity,
    Id,
    IsoDate,
    Moment,
    Temperature,
    TimeOfDay,
    WholeNumber,
    choice,
)
from specgen.model.node import Node


class Weekday(StrEnum):
    MONDAY = "monday"
    TUESDAY = "tuesday"
    WEDNESDAY = "wednesday"
    THURSDAY = "thursday"
    FRIDAY = "friday"
    SATURDAY = "saturday"
    SUNDAY = "sunday"


class Work(StrEnum):
    """What is done in a step, in the order of a job."""

    PREPARATION = "preparation"
    APPLICATION = "application"
    SANDING = "sanding"
    ASSEMBLY = "assembly"


class WorkingHours(Node):
    """Hours in which somebody works, on the days named; a break is two entries."""

    id: Id = leaf(Polarity.SCOPE, Concern.DOCUMENT, "id of the entry", required=True)
    days: tuple[Annotated[Weekday, choice(Weekday)], ...] = leaf(
        Polarity.FACT, Concern.DOCUMENT, "days of the week, as in [monday, friday]", required=True
    )
    begins: TimeOfDay = leaf(Polarity.FACT, Concern.DOCUMENT, 'start of work, as in "07:00"', required=True)
    ends: TimeOfDay = leaf(Polarity.FACT, Concern.DOCUMENT, 'end of work, as in "16:00"', required=True)


class StepTime(Node):
    """How long one step of a load takes, with the work in it that nobody is to be called away from."""

    id: Id = leaf(Polarity.SCOPE, Concern.DOCUMENT, "id of the entry", required=True)
    work: Annotated[Work, choice(Work)] = leaf(
        Polarity.FACT, Concern.DOCUMENT, "work: preparation, application, sanding or assembly", required=True
    )
    coat: Id | None = leaf(
        Polarity.FACT, Concern.DOCUMENT, "coat of the system (by its id), for application and sanding"
    )
    time: Duration = leaf(Polarity.FACT, Concern.DOCUMENT, "time of the step for one load", required=True)
    dries_for: Duration | None = leaf(
        Polarity.FACT, Concern.DOCUMENT, "drying time after a preparation with water or solvent, before the first coat"
    )
    painters: WholeNumber | None = leaf(
        Polarity.FACT, Concern.DOCUMENT, "number of painters on the step; 1 if left out"
    )


class Load(Node):
    """Items that are coated together."""

    id: Id = leaf(Polarity.SCOPE, Concern.DOCUMENT, "id of the load", required=True)
    items: tuple[Id, ...] = leaf(Polarity.FACT, Concern.DOCUMENT, "items of the load (by their ids)", required=True)


class HourOfAir(Node):
    """The air of one hour, from its beginning."""

    id: Id = leaf(Polarity.SCOPE, Concern.CLIMATE, "id of the entry", required=True)
    begins: Moment = leaf(
        Polarity.FACT, Concern.CLIMATE, 'beginning of the hour, as in "2026-11-27 14:00"', required=True
    )
    air: Temperature = leaf(Polarity.FACT, Concern.CLIMATE, "air temperature in that hour", required=True)
    humidity: Humidity | None = leaf(Polarity.FACT, Concern.CLIMATE, "relative humidity in that hour")
    surface: Temperature | None = leaf(
        Polarity.FACT, Concern.CLIMATE, "surface temperature in that hour; that of the air if left out"
    )


class Schedule(Node):
    """The plan of a job follows from these, the intervals of its coats, and the air."""

    starts: Moment | None = leaf(
        Polarity.FACT, Concern.DOCUMENT, 'start of the work, as in "2026-11-27 14:00"; without it no plan is printed'
    )
    working_hours: tuple[WorkingHours, ...] = entries("working hours", required=True)
    days_off: tuple[IsoDate, ...] = leaf(
        Polarity.FACT, Concern.DOCUMENT, "days without work, as in 2026-12-25", default=()
    )
    painters: WholeNumber | None = leaf(Polarity.FACT, Concern.DOCUMENT, "number of painters; 1 if left out")
    bays: WholeNumber | None = leaf(Polarity.FACT, Concern.DOCUMENT, "number of bays or booths; 1 if left out")
    times: tuple[StepTime, ...] = entries("times of the steps", required=True)
    loads: tuple[Load, ...] = entries("loads in their order; the items of a system are one load if left out")
    air: tuple[HourOfAir, ...] = entries("air hour by hour; the ambient conditions of the job if left out")
