"""The rows of the work in order that are inspections, each where it is made, with its number in the plan. Called by `work`."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from specgen.documents.method_statement.work_rows import WorkRow
from specgen.documents.parts.inspection import ambient, limits, passes
from specgen.documents.parts.wording import Words
from specgen.facts.job.inspected import numbers_of
from specgen.facts.job.looked_for import reads_wet_film
from specgen.facts.job.points import once_sanded
from specgen.model.acceptance import InspectionPoint, Stage
from specgen.model.job import Job
from specgen.model.spec import Spec
from specgen.model.system import Layer


class Points:
    """The inspections of a build as rows, with their number in the inspection and test plan."""

    def __init__(self, job: Job, spec: Spec, own: Sequence[InspectionPoint], told: set[str], words: Words) -> None:
        self._job, self._spec = job, spec
        self._numbers = numbers_of(job)
        self._own, self._told, self._words = own, told, words

    def stage(self, *stages: Stage | None) -> tuple[WorkRow, ...]:
        return tuple(self._row(point) for point in self._own if point.after is None and point.at in stages)

    def before_applying(self) -> tuple[WorkRow, ...]:
        """Those of the application that are made before it, as of the air."""
        return tuple(self._row(point) for point in self._applying() if not reads_wet_film(point))

    def while_wet(self) -> tuple[WorkRow, ...]:
        """Those that read the wet film, which is there once the coat is applied."""
        return tuple(self._row(point) for point in self._applying() if reads_wet_film(point))

    def _applying(self) -> Iterator[InspectionPoint]:
        return (point for point in self._own if point.after is None and point.at is Stage.APPLICATION)

    def after(self, layer: Layer) -> tuple[tuple[WorkRow, ...], tuple[WorkRow, ...]]:
        """Those on the coat as applied, and those on the coat once it is sanded or otherwise made ready for the next."""
        mine = [point for point in self._own if point.after == layer.id]
        return (
            tuple(self._row(point) for point in mine if not once_sanded(point)),
            tuple(self._row(point) for point in mine if once_sanded(point)),
        )

    def _row(self, point: InspectionPoint) -> WorkRow:
        words = self._words
        told = limits(point, self._job, self._spec, words)
        again = point.id in self._told
        self._told.add(point.id)
        return WorkRow(
            kind="hold" if point.hold_point else "point",
            number=self._numbers[point.id],
            title=point.check,
            text=words("Same as the first time.")
            if again
            else ". ".join(part for part in (point.method or "", point.frequency or "") if part),
            done=tuple(part for part in (told, "" if again and told else point.criterion.text or "") if part)
            or (passes(point, self._job, self._spec, words),),
            lines=(words("If it fails: {}").format(point.if_failed),) if point.if_failed and not again else (),
            brief=""
            if ambient(point, self._job, words)
            else limits(point, self._job, self._spec, words.in_one_unit()) or None,
        )
