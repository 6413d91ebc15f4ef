"""Whether a job states how its air is kept clean, and whether a sentence on air speaks of explosions alone. Called by the rules on air."""

from __future__ import annotations

import re

from specgen.model.job import Job

NO_AIR = re.compile(r"^(?:none|no|not)\b", re.I)
"""A sentence that states there is no ventilation, or that none is needed."""
_EXPLOSION = re.compile(r"explosive limit|explosion limit|\bLEL\b|\bLFL\b|lower flammab", re.I)
# a meter that warns is no ground on which the air was chosen
_WATCHED = re.compile(r"\balarm|\bdetector|\bmonitor|\bmeter\b", re.I)
_BREATH = re.compile(r"exposure|breath|respirat|\bmask|lungs|supplied air|air-fed", re.I)
# words of breathing that say it needs no protection
_UNPROTECTED = re.compile(
    r"safe to breathe|breathable|(?:without|no) (?:a |any )?(?:mask|respirat\w*|breathing (?:protection|apparatus))s?"
    r"|(?:mask|respirator)s? (?:is|are) not (?:needed|required|worn)",
    re.I,
)


def explosion_alone(text: str) -> bool:
    """True where the explosive limit is named and nothing that keeps people from breathing the vapour."""
    named = [clause for clause in re.split(r"[;,\n]|\.(?!\d)", text) if _EXPLOSION.search(clause)]
    return any(not _WATCHED.search(clause) for clause in named) and not _BREATH.search(_UNPROTECTED.sub("", text))


def states_air(job: Job) -> bool:
    """True where the job states a flow, air changes or a sentence on its ventilation."""
    air = job.ventilation
    if air is None:
        return False
    words = air.statement is not None and not NO_AIR.search(air.statement)
    return words or air.flow is not None or air.changes is not None
