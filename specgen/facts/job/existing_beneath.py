"""The existing coating beneath the new coats where it is measured spot by spot before they are applied, and taken off what is read later.

Read from the words of the points: `At the marked points, deducting the DFT of the existing finish`. Called by whoever assesses readings,
and by sheets that have room for them.
"""

from __future__ import annotations

import re

from specgen.facts.job.looked_for import words_of
from specgen.facts.job.points import BEFORE_PAINT
from specgen.facts.job.zinc_beneath import measures_zinc
from specgen.model.acceptance import InspectionPoint
from specgen.model.job import Job

_DEDUCTED = re.compile(r"\b(?:deduct(?:ing)?|subtract(?:ing)?)\b[^.;]*?\bexisting\b", re.I)
_EXISTING = re.compile(r"\bexisting\b", re.I)


def existing_point(point: InspectionPoint, job: Job) -> InspectionPoint | None:
    """The point whose spots are taken off those of the same names here; None where the words name none, where several points before
    the first coat measure what is there, or where a fixed correction is taken off."""
    if point.at in BEFORE_PAINT or _DEDUCTED.search(words_of(point)) is None:
        return None
    if point.gauge is None or point.gauge.correction is not None:
        return None
    measured = [
        one for one in job.inspection if _measures(one, job) and set(point.items) <= set(one.items or point.items)
    ]
    return measured[0] if len(measured) == 1 else None


def measures_existing(point: InspectionPoint, job: Job) -> bool:
    """True for a point whose spots another point takes off its own."""
    return any(existing_point(one, job) is point for one in job.inspection)


def _measures(point: InspectionPoint, job: Job) -> bool:
    named = point.at in BEFORE_PAINT and point.gauge is not None and _EXISTING.search(words_of(point)) is not None
    return named and not measures_zinc(point, job)
