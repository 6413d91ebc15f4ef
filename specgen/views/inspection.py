"""Inspection points as printed: when each falls and what passes. Called by `method_statement` and `job_card`."""

from __future__ import annotations

from collections.abc import Iterable

from specgen.model.acceptance import Criterion, InspectionPoint
from specgen.model.job import Job
from specgen.model.spec import Spec
from specgen.model.system import Layer
from specgen.views.tables import Column, TableView, table_view
from specgen.views.wording import Words


def points_table(job: Job, spec: Spec, words: Words) -> TableView:
    """Every point of a job, numbered in the order of the work."""
    layers = {layer.id: layer for system in spec.systems_of(job) for layer in system.layers}
    columns = [
        Column(words("No."), "w-5", numeric=True),
        Column(words("When"), "w-15"),
        Column(words("Check"), "w-15"),
        Column(words("Method, how often"), "w-20"),
        Column(words("Passes")),
        Column(words("If it fails"), "w-20"),
    ]
    rows = []
    for number, point in enumerate(job.inspection, 1):
        when = _when(point, layers, words) + (f"\n{words('HOLD POINT')}" if point.hold_point else "")
        method = _joined((point.method, point.often))
        rows.append((str(number), when, point.check, method, passes(point.criterion, words), point.if_failed or ""))
    return table_view(words("Inspection points in the order of the work"), columns, rows)


def passes(criterion: Criterion, words: Words) -> str:
    """What passes, one line a limit, rule or text."""
    least, most = criterion.min, criterion.max
    return _joined(
        (
            words("at least {}").format(words.phrase(least)) if least is not None else "",
            words("at most {}").format(words.phrase(most)) if most is not None else "",
            _rule(criterion, words),
            criterion.text,
        )
    )


def _joined(parts: Iterable[str | None]) -> str:
    return "\n".join(part for part in parts if part)


def _rule(criterion: Criterion, words: Words) -> str:
    if criterion.rule is None or criterion.rule.value == "own":
        return ""
    named = [criterion.rule.value.replace("SSPC-PA-2", "SSPC-PA 2").replace("ISO-", "ISO ")]
    if criterion.edition:
        named.append(words("edition {}").format(criterion.edition))
    if criterion.level is not None:
        named.append(words("level {}").format(criterion.level))
    return " ".join(named)


def _when(point: InspectionPoint, layers: dict[str, Layer], words: Words) -> str:
    if point.at is not None:
        return words.word(point.at)
    layer = layers.get(point.after or "")
    return words("after the {}").format(words.word(layer.role)) if layer is not None else ""
