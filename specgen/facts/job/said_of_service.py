"""What a sentence says that parts hold in service, and is typed otherwise. Called by the rule on scopes and service."""

from __future__ import annotations

import re

from specgen.facts.job.exposure import environment_of
from specgen.model.environment import EnvironmentKind, Medium
from specgen.model.job import Job

_HOLDS = re.compile(
    r"\b(?:carr(?:y|ies)|hold(?:s|ing)?|stores?|contains?|filled with|take|takes|lined for|tanks? (?:for|of)|insides? for)\b",
    re.I,
)
_OTHER = re.compile(
    r"\b(?:not|no|never|test\w*|wash\w*|rins\w*|clean\w*|old|formerly|once|before|earlier|emptied|instead|if|thinn\w*|gun|can|cans|own|engine)\b",
    re.I,
)
_CALLED: tuple[tuple[Medium, re.Pattern[str]], ...] = (
    (
        Medium.FUEL,
        re.compile(r"\b(?:diesel|petrol|gasoline|kerosene|jet fuel|fuel(?: oil)?|heating oil|gas oil)\b", re.I),
    ),
    (Medium.SEA_WATER, re.compile(r"\b(?:sea ?water|salt water|brackish water|brine)\b", re.I)),
    (Medium.WASTE_WATER, re.compile(r"\b(?:sewage|waste ?water|slurry|manure|effluent|leachate)\b", re.I)),
    (Medium.FRESH_WATER, re.compile(r"\b(?:drinking|fresh|rain|potable|tap|river) ?water\b", re.I)),
)


def another_medium(clause: str, job: Job) -> str | None:
    """What every part is stated to be immersed in, where a clause names other media alone."""
    if _HOLDS.search(clause) is None or _OTHER.search(clause):
        return None
    said = {medium for medium, called in _CALLED if called.search(clause)}
    held = [environment_of(job, item) for item in job.items]
    typed = [
        one.medium
        for one in held
        if one is not None and one.kind is EnvironmentKind.IMMERSION and one.medium is not None
    ]
    if not said or not typed or len(typed) < len(held) or said & set(typed):
        return None
    return f"the medium is stated as {typed[0]}"
