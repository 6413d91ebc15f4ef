"""Rows of air: each moment held against every limit of the job and its products. Called by `assessment`."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from datetime import datetime

from specgen.assessing.cells import CellError, Dates, day_of, figure_of
from specgen.assessing.faults import Faults
from specgen.assessing.records import Record
from specgen.assessing.results import AirRead
from specgen.facts.job.measured_air import Measured, Verdict, assess
from specgen.model.job import Job
from specgen.model.spec import Spec
from specgen.trade.known import NotKnown
from specgen.trade.working import Working
from specgen.units.display import show_range
from specgen.units.locale import N_, phrase
from specgen.units.quantity import Quantity

AIR = ("air", "humidity", "surface", "dew_point")
_KINDS = {"air": "temperature", "humidity": "humidity", "surface": "temperature", "dew_point": "temperature"}
_APART = 1
"""Kelvin by which a dew point read from a table may differ from the one worked out."""


def air_read(records: Sequence[Record], job: Job, spec: Spec, dates: Dates, faults: Faults) -> Iterator[AirRead]:
    """Every row of air, in its order."""
    for record in records:
        point = record.text("point")
        read = {name: _figure(name, record, point, faults) for name in AIR if record.text(name)}
        air, humidity, surface = (read.get(name) for name in AIR[:3])
        figures: tuple[Working, ...] = ()
        missed: tuple[str, ...] = ()
        outside: tuple[tuple[str, Quantity], ...] = ()
        if air is not None and humidity is not None:
            found = assess(job, spec, Measured(air, humidity, surface or air))
            if isinstance(found, NotKnown):
                faults.tell(
                    "RDG003",
                    f"there is no such air: {found.why}",
                    record.place("air"),
                    point=point,
                    item=record.text("item"),
                )
                air = None
            else:
                # without a surface temperature nothing is known of its margin
                figures = found.figures[: 1 if surface is None else 2]
                not_met = tuple(_not_met(found.verdicts, with_surface=surface is not None))
                missed = tuple(_missed(not_met))
                outside = tuple((one.name, one.quantity) for one in not_met)
                _same_dew_point(record, read.get("dew_point"), found.figures[0].quantity, point, faults)
        yield AirRead(
            record=record,
            on=moment(record, "on", dates, point, faults),
            item=record.text("item"),
            coat=record.text("coat"),
            figures=figures,
            missed=missed,
            outside=outside,
            complete=None not in (air, humidity, surface),
            measured=air,
        )


def moment(record: Record, column: str, dates: Dates, point: str, faults: Faults) -> datetime | None:
    """The day and time in a cell; None where there is none, or it cannot be read, which is told."""
    text = record.text(column)
    if not text:
        return None
    try:
        return day_of(text, dates)
    except CellError as reason:
        faults.tell("RDG003", reason.what, record.place(column), point=point, item=record.text("item"))
        return None


def _figure(name: str, record: Record, point: str, faults: Faults) -> Quantity | None:
    try:
        return figure_of(_KINDS[name], record.text(name), record.unit_text(name))
    except CellError as reason:
        faults.tell("RDG003", reason.what, record.place(name), point=point, item=record.text("item"))
        return None


def _not_met(verdicts: Iterable[Verdict], *, with_surface: bool) -> Iterator[Verdict]:
    for verdict in verdicts:
        of_surface = verdict.what.startswith("surface")
        if not verdict.met and (with_surface or not of_surface):
            yield verdict


def _missed(verdicts: Iterable[Verdict]) -> Iterator[str]:
    for verdict in verdicts:
        limits = ", ".join(dict.fromkeys(show_range(limit.range) for limit in verdict.limits if not limit.met))
        yield phrase(
            N_("{what} {found}, outside {limits}"), what=phrase(verdict.what), found=verdict.found, limits=limits
        )


def _same_dew_point(record: Record, stated: Quantity | None, found: Quantity, point: str, faults: Faults) -> None:
    if stated is None:
        return
    apart = abs(stated.to("degC") - found.to("degC"))
    if apart > _APART:
        what = (
            f"the dew point is given as {stated}; air and humidity of the row give {float(found.to('degC')):.1f} degC"
        )
        faults.tell("RDG014", what, record.place("dew_point"), point=point, item=record.text("item"))
