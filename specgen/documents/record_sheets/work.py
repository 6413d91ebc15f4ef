"""The rows of work on a job's record sheets: what was done on each item, repairs, what was inspected again, acceptance and release.

Called by `rows`. Where work has a beginning and an end, each is a row of its own in one line of boxes.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from specgen.assessing.forms import span_name
from specgen.assessing.results import Did
from specgen.documents.parts.coats import coat_name, numbered
from specgen.documents.parts.wording import Words
from specgen.documents.record_sheets.lines import Rows, SheetLine, SheetTable
from specgen.facts.job.builds import builds_of
from specgen.facts.job.inspected import numbers_of
from specgen.facts.layer.sanding import sanded
from specgen.model.acceptance import InspectionPoint
from specgen.model.job import Item, Job
from specgen.model.spec import Spec
from specgen.model.system import System

# lines for the repairs at one film point; at one that is looked at a single one
_REPAIRS = 2


def work_done_on(job: Job, spec: Spec, rows: Rows, words: Words) -> SheetTable:
    """Preparation, the application of each coat and its sanding, item by item."""
    lines = []
    for build in builds_of(job, spec):
        for item in build.items:
            for name, about in _steps(item, spec.system_of(job, item) or build.system, job, spec, words):
                begun, ended = (rows.enter(item=item.id, **about) for _ in range(2))
                fields = (
                    *rows.fields(begun, "on"),
                    *rows.fields(ended, "on"),
                    *(span_name(column, begun, ended) for column in ("by", "remark")),
                )
                lines.append(SheetLine(printed=(item.id, name), fields=fields))
    return SheetTable(
        title=words("Work done"),
        widths=("w-12", "w-25"),
        note=words("Who did it, and when it began and ended: times between coats are counted from these boxes."),
        heads=(
            words("Item"),
            words("Work"),
            words("Begun: date, time"),
            words("Ended: date, time"),
            words("By"),
            words("Remark"),
        ),
        shared=(),
        lines=tuple(lines),
    )


def _steps(item: Item, system: System, job: Job, spec: Spec, words: Words) -> Iterator[tuple[str, dict[str, str]]]:
    """The name of each piece of work, and what its rows are about."""
    if spec.preparation_of(job, item) is not None:
        yield words("Preparation"), {"work": Did.PREPARATION.value}
    for number, layer in numbered(system):
        coat = coat_name(number, layer, words)
        yield words("{}: application").format(coat), {"coat": layer.id, "work": Did.APPLICATION.value}
        if sanded(layer):
            yield words("{}: sanding").format(coat), {"coat": layer.id, "work": Did.SANDING.value}


def repairs(
    points: Sequence[InspectionPoint], film: Sequence[InspectionPoint], job: Job, rows: Rows, words: Words
) -> SheetTable:
    """Lines for what is repaired, by the inspection that found it."""
    numbers, lines = numbers_of(job), []
    for point in points:
        for _ in range(_REPAIRS if point in film else 1):
            number = rows.enter(point=point.id, work=Did.REPAIR.value)
            fields = rows.fields(number, "item", "part", "spot", "remark", "on", "by")
            lines.append(SheetLine(printed=(f"{numbers[point.id]} {point.check}",), fields=fields))
    return SheetTable(
        title=words("Repairs"),
        widths=("w-25", "w-10", "w-7", "w-7", "w-25"),
        note=words(
            "What was found and repaired, items as named above. Earlier readings and results at that place no longer count: inspect "
            "again and enter the new ones below."
        ),
        heads=(
            words("Inspection"),
            words("Item"),
            words("Part"),
            words("Spot"),
            words("What was done"),
            words("Date, time"),
            words("By"),
        ),
        shared=(),
        lines=tuple(lines),
    )


def looked_at_again(points: Sequence[InspectionPoint], job: Job, rows: Rows, words: Words) -> SheetTable:
    """A line for each inspection in words."""
    numbers, lines = numbers_of(job), []
    for point in points:
        number = rows.enter(point=point.id)
        fields = rows.fields(number, "item", "value", "on", "by")
        lines.append(SheetLine(printed=(f"{numbers[point.id]} {point.check}",), fields=fields))
    return SheetTable(
        title=words("Results after a repair"),
        widths=("w-35",),
        note=words("Write conforming or not conforming, or the value with its unit."),
        heads=(words("Inspection"), words("Item"), words("Result"), words("Date, time"), words("By")),
        shared=(),
        lines=tuple(lines),
    )


def acceptance_and_release(job: Job, rows: Rows, words: Words) -> SheetTable:
    """Two lines for each item, with room to sign on paper."""
    lines = []
    for item in job.items:
        for name, did in ((words("Acceptance"), Did.ACCEPTANCE), (words("RELEASE"), Did.RELEASE)):
            number = rows.enter(item=item.id, work=did.value)
            fields = (*rows.fields(number, "on", "by", "remark"), "")
            lines.append(SheetLine(printed=(item.id, name), fields=fields))
    return SheetTable(
        title=words("Acceptance and release"),
        widths=("w-12", "w-12", "w-15", "w-15", "w-25"),
        note=words(
            "Each item is released once, by the person responsible, after all its other entries. A release covers what is recorded and "
            "nothing more. Sign on paper only."
        ),
        heads=(
            words("Item"),
            words("Decision"),
            words("Date, time"),
            words("By"),
            words("Remark"),
            words("Signature"),
        ),
        shared=(),
        lines=tuple(lines),
    )
