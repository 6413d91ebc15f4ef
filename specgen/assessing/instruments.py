"""The instruments that readings were taken with, as their rows state them, and whether their checks bear the readings.

Called by `assessment` and by the reports on it.
"""

from __future__ import annotations

from collections.abc import Collection, Iterator, Mapping
from dataclasses import dataclass
from datetime import datetime
from fractions import Fraction

from specgen.assessing.air import moment
from specgen.assessing.cells import CellError, Dates, figure_of, says_nothing, shows_nothing
from specgen.assessing.columns import INSTRUMENT
from specgen.assessing.faults import Faults
from specgen.assessing.records import Record, Source, columns
from specgen.assessing.results import Assessment
from specgen.assessing.sorting import Sorted
from specgen.facts.job.points import principle_of
from specgen.model.acceptance import GaugePrinciple, InspectionPoint
from specgen.model.job import Job
from specgen.standards.tables import table
from specgen.units.display import show
from specgen.units.locale import N_, phrase
from specgen.units.quantity import Quantity

ZERO = ("zero_before", "zero_after")
_NEEDED = ("gauge", "serial", "checked_on")
_stated = columns(*INSTRUMENT, "point")
_key = columns("item", *INSTRUMENT, "on")

Unchecked = dict[tuple[str, str], dict[str, None]]
"""By point and item: why the instrument does not bear the readings, each reason once."""


@dataclass(frozen=True, slots=True)
class Instrument:
    """One instrument with its checks as written, by column, an empty text where nothing is; `units` of the zero readings whose cells
    name none; `points` are ids in the order of the job.
    """

    stated: Mapping[str, str]
    units: Mapping[str, str]
    points: tuple[str, ...]


def instruments_of(found: Assessment) -> tuple[Instrument, ...]:
    """In the order of the rows; rows of film that state none are told by a finding. What is stated for a whole file is of its films."""
    film = {lot.point.id for lot in found.lots}
    used: dict[tuple[tuple[str, ...], tuple[str, ...]], set[str]] = {}
    units: dict[int, tuple[str, ...]] = {}
    for record in found.records:
        *stated, point = _stated(record)
        if any(stated) and (point in film or record.has("gauge") or record.has("serial")):
            source = record.source
            if id(source) not in units:
                units[id(source)] = tuple(source.unit_of(name) for name in ZERO)
            used.setdefault((tuple(stated), units[id(source)]), set()).add(point)
    return tuple(
        Instrument(
            dict(zip(INSTRUMENT, stated, strict=True)),
            dict(zip(ZERO, units_of, strict=True)),
            tuple(point.id for point in found.job.inspection if point.id in points),
        )
        for (stated, units_of), points in used.items()
    )


def unchecked(job: Job, rows: Sorted, film: Collection[str], dates: Dates, faults: Faults) -> Unchecked:
    """Why film readings are not borne by their instrument: it, or its check, is not stated, or was not valid on the day.

    One warning a file and point where something is not stated, one a row where days or zero readings say that something is wrong.
    """
    found: Unchecked = {}
    for point in job.inspection:
        seen: set[tuple[str, ...]] = set()
        told: set[str] = set()
        last: tuple[Source | None, tuple[str, ...]] = None, ()
        for record in rows.with_values(point.id, film=True) if point.id in film else ():
            if not record.text("value"):
                continue  # nothing was read
            # thousands of rows say the same, mostly one after the other
            stated = _key(record)
            if record.source is last[0] and stated == last[1]:
                continue
            last = record.source, stated
            key = (record.source.file, *stated)
            if key in seen:
                continue
            seen.add(key)
            for why in _against(record, point, dates, faults, told):
                found.setdefault((point.id, record.text("item")), {})[why] = None
    return found


def _against(record: Record, point: InspectionPoint, dates: Dates, faults: Faults, told: set[str]) -> Iterator[str]:
    _tell_zero(record, point, faults)
    if lacking := ", ".join(name for name in _NEEDED if says_nothing(record.text(name))):
        if record.source.file not in told:
            told.add(record.source.file)
            faults.tell("RDG012", f"readings at {point.id} are without {lacking}", record.place(), point=point.id)
        yield phrase(N_("instrument, serial number and day of its check are not all recorded"))
        return
    checked, until, on = (
        moment(record, name, dates, point.id, faults) for name in ("checked_on", "calibrated_until", "on")
    )
    if checked is None:
        yield phrase(N_("the day on which the instrument was checked cannot be read"))
    if on is None:
        return
    if checked is not None and checked.date() > on.date():
        what = f"the instrument was checked on {record.text('checked_on')}, after it was read"
        faults.tell("RDG012", what, record.place("checked_on"), point=point.id)
        yield phrase(N_("the instrument was checked only after it was read"))
    elif checked is not None:
        _tell_old(checked, on, record, point, faults)
    if until is not None and until.date() < on.date():
        what = f"the instrument is calibrated until {until.date()} and was read on {on.date()}"
        faults.tell("RDG012", what, record.place("calibrated_until"), point=point.id)
        yield phrase(N_("the calibration of the instrument had run out on {day}"), day=until.date().isoformat())


def _tell_old(checked: datetime, on: datetime, record: Record, point: InspectionPoint, faults: Faults) -> None:
    """A check of an earlier day, without a zero reading beside it, is told; what is common practice decides nothing."""
    if checked.date() < on.date() and not record.text("zero_before"):
        what = f"last checked on {checked.date()}, read on {on.date()}; common practice is a zero check before readings"
        faults.tell("RDG025", what, record.place("checked_on"), point=point.id)


def _tell_zero(record: Record, point: InspectionPoint, faults: Faults) -> None:
    """A zero reading further off than gauges usually are (table gauge_tolerances, unconfirmed) is told and decides nothing."""
    principle = principle_of(point) or GaugePrinciple.MAGNETIC
    usual = next((row for row in table("gauge_tolerances").rows if row["id"] == principle.value), None)
    for name in ZERO:
        text = record.text(name)
        if not text:
            continue
        if shows_nothing(text):
            what = f"{text} is what a gauge shows that reads nothing"
            faults.tell("RDG005", what, record.place(name), point=point.id, item=record.text("item"))
            continue
        try:
            read = figure_of("thickness", text.lstrip("-+\u2212"), record.unit_text(name))
        except CellError as reason:
            faults.tell("RDG003", reason.what, record.place(name), point=point.id, item=record.text("item"))
            continue
        if usual is not None and read.to("um") > Fraction(usual["at_least_um"]):
            usually = show(Quantity.of("thickness", Fraction(usual["at_least_um"]), "um"))
            what = f"the gauge read {text} on its zero plate; usual tolerance (unconfirmed): {usually}"
            faults.tell("RDG025", what, record.place(name), point=point.id)
