"""The zinc beneath the paint where it is measured part by part: which point measures it, and which points have it taken off.

Read from the words of the points: `Deduct the mean zinc thickness of the part, point 1`. Called by whoever assesses readings, and by
sheets and cards that have room for them.
"""

from __future__ import annotations

import re

from specgen.facts.job.in_words import bounds
from specgen.facts.job.looked_for import words_of
from specgen.facts.job.points import BEFORE_PAINT
from specgen.model.acceptance import InspectionPoint
from specgen.model.job import Job
from specgen.units.quantity import Range

_DEDUCTED = re.compile(r"\bdeduct(?:ing)?\b[^.;]*?\bzinc\b[^.;]*?\b(?:point|inspection) (\d{1,3})\b", re.I)
_SENTENCE = re.compile(r"[;\n]|[,.](?!\d)")


def zinc_point(point: InspectionPoint, job: Job) -> InspectionPoint | None:
    """The point whose mean of a part is taken off every reading there; None where the words name none that measures the bare part, or
    where a fixed correction is taken off."""
    found = _DEDUCTED.search(words_of(point))
    if found is None or point.at in BEFORE_PAINT or (point.gauge is not None and point.gauge.correction is not None):
        return None
    number = int(found[1])
    named = job.inspection[number - 1] if 1 <= number <= len(job.inspection) else None
    return named if named is not None and named.at in BEFORE_PAINT and named.gauge is not None else None


def measures_zinc(point: InspectionPoint, job: Job) -> bool:
    """True for a point whose measurements another point takes off its own."""
    return any(zinc_point(one, job) is point for one in job.inspection)


def zinc_asked(point: InspectionPoint) -> Range | None:
    """What the mean of a part has to be, by the one sentence on a mean; None where none says it in a figure."""
    sentences = [one for one in _SENTENCE.split(point.criterion.text or "") if re.search(r"\bmean\b", one, re.I)]
    found = [said for one in sentences if (said := bounds(one, "thickness")) is not None]
    return found[0] if len(found) == 1 else None
