"""What an assessment comes to: a verdict on every item at every inspection point, with its reasons, and what it rests on.

Texts are phrases, for the screen and for pages. Made by `assessment`, asked by reports and documents.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from datetime import date, datetime, timedelta
from enum import StrEnum
from fractions import Fraction

from specgen.assessing.cells import has_time
from specgen.assessing.records import Record
from specgen.findings import Finding
from specgen.model.acceptance import Criterion, InspectionPoint
from specgen.model.concession import Concession
from specgen.model.job import Item, Job
from specgen.model.system import Layer, System
from specgen.trade.film_acceptance import Counting, Judged, Least, Reason
from specgen.trade.film_area import Area
from specgen.trade.film_walk import Way
from specgen.trade.verdict import Verdict, together
from specgen.trade.working import Working
from specgen.units.locale import N_
from specgen.units.quantity import Quantity, Range

__all__ = [
    "AirRead",
    "Assessment",
    "At",
    "BatchUsed",
    "Deviation",
    "Did",
    "Done",
    "LessBefore",
    "Lot",
    "Other",
    "Reason",
    "SpotLess",
    "SpotRead",
    "Verdict",
    "Waited",
    "together",
]


@dataclass(frozen=True, slots=True)
class SpotRead:
    """One spot of one part: its readings in the unit of its lot."""

    name: str
    item: str
    part: str
    spot: str
    readings: tuple[Fraction, ...]


@dataclass(frozen=True, slots=True)
class Other:
    """What another common rule would say of the same readings. `unconfirmed` where a figure of that rule is not confirmed; `judged`
    is None where the rule lacks a figure, and `why` says which."""

    rule: str
    judged: Judged | None
    why: str = ""
    unconfirmed: bool = False


@dataclass(frozen=True, slots=True, kw_only=True)
class Lot:
    """Film readings that are judged together: those of a measurement area, or all of a point under one criterion.

    `counting` is None where the criterion cannot be judged from figures, and `why` says why. `walks` are spots around the area by
    direction. `dropped` readings are left out by a person.
    """

    point: InspectionPoint
    name: str
    criterion: Criterion
    items: tuple[str, ...]
    spots: tuple[SpotRead, ...]
    area: Area
    counting: Counting | None
    judged: Judged | None
    least: Least
    others: tuple[Other, ...] = ()
    walks: Mapping[str, Way] = field(default_factory=dict)
    dropped: tuple[Record, ...] = ()
    why: str = ""

    @property
    def unit(self) -> str:
        return self.area.unit


@dataclass(frozen=True, slots=True)
class SpotLess:
    """One spot: its spot measurement, what was measured there before, and what is left."""

    name: str
    total: Fraction
    before: Fraction
    left: Fraction


@dataclass(frozen=True, slots=True, kw_only=True)
class LessBefore:
    """The last coat on an item by difference: `asked` of it, `spots` with what is left, and `alone` those that were not read before."""

    item: str
    before: InspectionPoint
    asked: Range
    unit: str
    spots: tuple[SpotLess, ...]
    alone: tuple[str, ...]
    judged: Judged
    verdict: Verdict
    reasons: tuple[str, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class At:
    """The verdict on an item at a point. `next` says what is missing and where to measure; `put_right` what the job says to do,
    `conceded` what it conforms under."""

    point: InspectionPoint
    item: Item
    verdict: Verdict
    reasons: tuple[str, ...] = ()
    next: tuple[str, ...] = ()
    put_right: str = ""
    lots: tuple[Lot, ...] = ()
    said_by: str = ""
    less: LessBefore | None = None
    conceded: tuple[Concession, ...] = ()


@dataclass(frozen=True, slots=True, kw_only=True)
class AirRead:
    """The air at one moment, and every limit of the job and its products that it does not meet; `measured` is its temperature.

    `outside` are the figures that do not meet a limit, by what a concession calls it.
    """

    record: Record
    on: datetime | None
    item: str
    coat: str
    figures: tuple[Working, ...]
    missed: tuple[str, ...]
    outside: tuple[tuple[str, Quantity], ...]
    complete: bool
    measured: Quantity | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class BatchUsed:
    """Paint that was used."""

    record: Record
    on: datetime | None
    item: str
    coat: str
    product: str
    batch: str
    expires: datetime | None
    cans: str


class Did(StrEnum):
    """Work that a row records; the value is the word in the column `work`, and what is printed."""

    PREPARATION = N_("preparation")
    APPLICATION = N_("application")
    SANDING = N_("sanding")
    REPAIR = N_("repair")
    ACCEPTANCE = N_("acceptance")
    RELEASE = N_("release")


@dataclass(frozen=True, slots=True, kw_only=True)
class Done:
    """A row of work. `on` is midnight where a day alone is stated."""

    record: Record
    did: Did
    on: datetime

    @property
    def coat(self) -> str:
        """Its id; empty where the row names none."""
        return self.record.text("coat")

    @property
    def timed(self) -> bool:
        return has_time(self.record.text("on"))


@dataclass(frozen=True, slots=True, kw_only=True)
class Waited:
    """How long a coat of an item was left before the next one, or before it was sanded (`above` is None then).

    `shortest` and `longest` are what the recorded times allow; None where one of the two is not recorded. `least` and `most` are what
    the job asks at its coldest and its warmest air; None where there is no such limit.
    """

    item: Item
    system: System
    below: Layer
    above: Layer | None
    least: Quantity | None
    most: Quantity | None
    shortest: timedelta | None
    longest: timedelta | None
    verdict: Verdict
    reasons: tuple[str, ...] = ()
    put_right: str = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class Deviation:
    """What was found at a point of an item before a repair, and the repair; `verdict` is what the point comes to since."""

    point: InspectionPoint
    item: Item
    found: tuple[str, ...]
    repair: Done
    verdict: Verdict


@dataclass(frozen=True, slots=True)
class ConcessionSeen:
    """A concession of the job, whether it is in force on the day of the assessment, and the (item, point) that conform under it.

    `after` is the first day of what it was used for, where that is before the day of its agreement.
    """

    concession: Concession
    is_in_force: bool
    used: tuple[tuple[str, str], ...]
    after: date | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class Assessment:
    """The whole of it. `day` is the day it is judged by; `files` are names and digests of what was read."""

    job: Job
    day: date
    files: tuple[tuple[str, str], ...]
    records: tuple[Record, ...]
    results: tuple[At, ...]
    lots: tuple[Lot, ...]
    air: tuple[AirRead, ...]
    batches: tuple[BatchUsed, ...]
    findings: tuple[Finding, ...]
    work: tuple[Done, ...] = ()
    waited: tuple[Waited, ...] = ()
    deviations: tuple[Deviation, ...] = ()
    concessions: tuple[ConcessionSeen, ...] = ()

    def of(self, item: Item) -> tuple[At, ...]:
        return tuple(result for result in self.results if result.item.id == item.id)

    def verdict_on(self, item: Item) -> Verdict:
        """What the points of an item come to, and the times between its coats."""
        waited = (wait.verdict for wait in self.waited if wait.item.id == item.id)
        return together((*(result.verdict for result in self.of(item)), *waited))

    @property
    def verdict(self) -> Verdict:
        return together(self.verdict_on(item) for item in self.job.items)
