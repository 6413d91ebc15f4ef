"""The boxes for readings of film: the spots of every part as planned, and those that are read again after a repair. Called by `rows`.

Beside the readings of a spot are boxes for what whoever measures works out: the mean, what is deducted, and what is left.
"""

from __future__ import annotations

from collections.abc import Iterator

from specgen.assessing.forms import Aside, aside_name, span_name
from specgen.documents.parts.inspection import passes, run_on
from specgen.documents.parts.pictures import PictureView
from specgen.documents.parts.wording import Words
from specgen.documents.record_sheets.lines import Rows, SheetLine, SheetTable
from specgen.facts.job.by_difference import by_difference
from specgen.facts.job.criteria import criteria_of
from specgen.facts.job.existing_beneath import existing_point
from specgen.facts.job.inspected import film_points, numbers_of, places
from specgen.facts.job.points import BEFORE_PAINT
from specgen.facts.job.spots import PartSpots, spots_of_parts
from specgen.facts.job.zinc_beneath import measures_zinc, zinc_point
from specgen.model.acceptance import InspectionPoint
from specgen.model.job import Job
from specgen.model.spec import Spec
from specgen.units.quantity import Quantity

# as many readings as a sheet has boxes for, and spots of a film point that are read again after a repair
_MOST_READINGS, _AGAIN = 1500, 3
_SIGNS = {"um": "µm"}


class Spots:
    """The tables of readings of a job, its rows laid down in `rows`."""

    def __init__(self, job: Job, spec: Spec, rows: Rows, words: Words) -> None:
        self._job, self._spec, self._rows, self._words = job, spec, rows, words
        self._numbers = numbers_of(job)

    def readings(self, point: InspectionPoint, pictures: tuple[PictureView, ...]) -> Iterator[SheetTable]:
        """The spots as planned; then, of a film, boxes for those that are read again, with the same gauge."""
        rows, words, unit = self._rows, self._words, _unit(point, self._job, self._spec)
        parts = spots_of_parts(point, self._job, self._spec)
        many = sum(len(one.spots) * one.readings for one in parts)
        readings = max((one.readings for one in parts), default=1)
        worked_out, first = self._worked_out(point, readings), len(rows.printed) + 1
        lines = tuple(self._lines(point, parts, unit, worked_out) if many <= _MOST_READINGS else ())
        again = tuple(self._again(point, unit, readings, worked_out)) if lines and point.at not in BEFORE_PAINT else ()
        of_what = (
            words("Mean of the part, {unit}") if measures_zinc(point, self._job) else words("Reading {number}, {unit}")
        )
        # the gauge is that of the spots read again too
        last = len(rows.printed)
        sign = _SIGNS.get(unit, unit)
        heads = (
            words("Item"),
            words("Part"),
            words("Spot"),
            *(of_what.format(number=at, unit=sign) for at in range(1, readings + 1)),
            *(head.format(unit=sign) for _, head in worked_out),
        )
        shared = (
            (words("Gauge"), "gauge"),
            (words("Serial number"), "serial"),
            (words("Checked on"), "checked_on"),
            (words("Calibrated until"), "calibrated_until"),
            (words("Zero before, µm"), "zero_before"),
            (words("Zero after, µm"), "zero_after"),
            (words("Date, time"), "on"),
            (words("By"), "by"),
        )
        accepted = run_on(passes(point, self._job, self._spec, words.with_one_film()))
        attach = words("More readings than a sheet has boxes for ({}): record them with the gauge.").format(many)
        said = (accepted, self._same_places(point, parts) if lines else attach)
        yield SheetTable(
            title=named(point, self._numbers[point.id], words),
            note=". ".join(part.rstrip(".") for part in said if part),
            widths=("w-12", "w-8", "w-8"),
            pictures=pictures,
            heads=heads if lines else (),
            shared=tuple((name, span_name(column, first, last)) for name, column in shared) if lines else (),
            lines=lines,
        )
        if again:
            yield SheetTable(
                title=words("Inspection {}, after a repair").format(self._numbers[point.id]),
                note=words("Spots read again, by the names they have above; gauge and checks as entered there."),
                heads=(*heads, words("Date, time"), words("By")),
                widths=("w-12", "w-6", "w-6"),
                shared=(),
                lines=again,
            )

    def _lines(
        self, point: InspectionPoint, parts: tuple[PartSpots, ...], unit: str, worked_out: list[tuple[Aside, str]]
    ) -> Iterator[SheetLine]:
        rows = self._rows
        for one in parts:
            for spot in one.spots:
                about = {"point": point.id, "item": one.item.id, "part": str(one.part), "spot": spot, "unit": unit}
                held = [rows.enter(**about, reading=str(reading)) for reading in range(1, one.readings + 1)]
                values = (name for number in held for name in rows.fields(number, "value"))
                beside = (aside_name(what, held[0]) for what, _ in worked_out)
                yield SheetLine(printed=(one.item.id, str(one.part), spot), fields=(*values, *beside))

    def _again(
        self, point: InspectionPoint, unit: str, readings: int, worked_out: list[tuple[Aside, str]]
    ) -> Iterator[SheetLine]:
        rows = self._rows
        for _ in range(_AGAIN):
            held = [rows.enter(point=point.id, unit=unit, reading=str(number)) for number in range(1, readings + 1)]
            item, part, spot, on, by = (
                span_name(column, held[0], held[-1]) for column in ("item", "part", "spot", "on", "by")
            )
            values = (name for number in held for name in rows.fields(number, "value"))
            beside = (aside_name(what, held[0]) for what, _ in worked_out)
            yield SheetLine(printed=(), fields=(item, part, spot, *values, *beside, on, by))

    def _worked_out(self, point: InspectionPoint, readings: int) -> list[tuple[Aside, str]]:
        """What is worked out of the readings of a spot: the part of the field's name, and the head of its column."""
        words = self._words
        found: list[tuple[Aside, str]] = [("mean", words("Mean, {unit}"))] if readings > 1 else []
        before = sorted(int(self._numbers[one]) for one in self._before(point))
        if zinc_point(point, self._job) is not None:
            found.append(("zinc", words("Zinc of the part, {unit}")))
        elif existing_point(point, self._job) is not None:
            found.append(("zinc", words("Existing coating, {unit}")))
        elif before:
            told = words("Inspection {number}, {{unit}}").format(number=", ".join(str(number) for number in before))
            found.append(("before", told))
        else:
            return found
        return [*found, ("net", words("Net, {unit}"))]

    def _before(self, point: InspectionPoint) -> set[str]:
        """The points whose readings at the same spots are deducted there."""
        job, spec = self._job, self._spec
        read = {one.id for one in film_points(job)}
        found = (by_difference(point, item, system, job, spec, read) for item, system in places(point, job, spec))
        return {one.before.id for one in found if one is not None}

    def _same_places(self, point: InspectionPoint, parts: tuple[PartSpots, ...]) -> str:
        """Where spots that no drawing shows are read again and the difference decides: that they have to be found again."""
        later = []
        for one in film_points(self._job):
            existing = existing_point(one, self._job)
            if point.id in self._before(one) or (existing is not None and existing.id == point.id):
                later.append(self._numbers[one.id])
        if not later or not any(spot.isdigit() for one in parts for spot in one.spots):
            return ""
        words = self._words
        text = words(
            "Spots with a number are on no drawing and are read again at inspection {}: mark them, or note where each lies."
        )
        return text.format(", ".join(later))


def named(point: InspectionPoint, number: str, words: Words) -> str:
    """`3 DFT of primer (HOLD POINT)`: its number in the plan, and where the work stops for it."""
    return f"{number} {point.check}" + (f" ({words('HOLD POINT')})" if point.hold_point else "")


def _unit(point: InspectionPoint, job: Job, spec: Spec) -> str:
    """The unit of the limits, in which the readings are written down."""
    for held in criteria_of(point, job, spec):
        for value in (held.criterion.min, held.criterion.nominal, held.criterion.max):
            if isinstance(value, Quantity):
                return value.unit
    return "um"
