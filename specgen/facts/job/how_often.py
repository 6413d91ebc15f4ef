"""How seldom an inspection point looks, by its typed sampling or by its words. Called by the rules on inspection and climate."""

from __future__ import annotations

import re

from specgen.model.acceptance import InspectionPoint
from specgen.units.quantity import parse_quantity

_DAY = parse_quantity("duration", "24 h")
_SELDOM = re.compile(
    r"(?<!than )(?<!for )(?<!within )(?<!after )\b"
    r"(?:(?:a|an|each|every|per|once a) (?:week|fortnight|month|year)\b|weekly|fortnightly|monthly|yearly"
    r"|(?:every|each) (?:other|second|third|[2-9]|\d\d+) (?:days?|weeks?|months?)"
    r"|^once\b(?!.*\b(?:an?|each|every|per|before)\b)|on the first day"
    r"|once (?:only|at the (?:start|beginning|end)|(?:a|per|for the|in the) (?:job|contract|order|project)))\b",
    re.I,
)
_OFTEN = re.compile(
    r"\b(?:daily|shifts?|hours?|\d+ ?h|(?:each|every|per|a) (?:day|coat|part|item|batch)|before each|before every|all)\b",
    re.I,
)


_ONCE_A_DAY = re.compile(
    r"^\W*(?:(?:each|every|in the|once each|once every) (?:morning|evening|day)|once (?:a|per|each) (?:day|shift)|daily)\b"
    r"(?!.*\b(?:coats?|hours?|hourly|h|change|twice|noon|before|during|and|two|three|four)\b)",
    re.I,
)


def once_a_day(point: InspectionPoint) -> str | None:
    """That a point looks once a day and no more, in its own words."""
    if point.sampling is not None and (point.sampling.every is not None or point.sampling.per is not None):
        return None
    return point.frequency if _ONCE_A_DAY.search(point.frequency or "") else None


def seldom(point: InspectionPoint) -> str | None:
    """That a point looks less than once a day, in its own words; None where it looks as often, or does not say."""
    every = point.sampling.every if point.sampling is not None else None
    if every is not None:
        return f"every {every}" if every > _DAY else None
    if point.sampling is not None and point.sampling.per is not None:
        return None
    found = _SELDOM.search(point.frequency or "")
    return point.frequency if found is not None and not _OFTEN.search(point.frequency or "") else None
