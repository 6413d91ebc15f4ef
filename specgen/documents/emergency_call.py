"""The emergency number as a telephone dials it, for the bar at the foot of a page on a phone."""

from __future__ import annotations

import re
from dataclasses import dataclass

from specgen.documents.parts.cautions import emergency
from specgen.documents.parts.wording import Words
from specgen.model.project import Project

# Hours stand beside many numbers, and are no part of them.
_HOURS = re.compile(
    r"\b24\s*/\s*7\b|\b24\s*-?\s*h(?:ours?|rs?)?\b|\b[0-9]{1,2}[:.][0-9]{2}\b(?=\s*(?:to|-|–))", re.IGNORECASE
)
# Groups of figures with one sign between them; a second number beside the first has more between.
_NUMBER = re.compile(r"\+?(?:\([0-9]+\)|[0-9]+)(?:[ \N{NO-BREAK SPACE}./-]?(?:\([0-9]+\)|[0-9]+))*")
# What is dialled only at home, as in +49 (0)711.
_AT_HOME = re.compile(r"(?<=[0-9])[ \N{NO-BREAK SPACE}]?\(0\)")
_FEWEST, _MOST = 3, 15  # 112; Recommendation ITU-T E.164, clause 6: at most 15 digits


@dataclass(frozen=True, slots=True, kw_only=True)
class EmergencyCall:
    """`line` as printed, `number` as dialled: empty where the text holds none that is sure, so that no other one is dialled."""

    line: str
    number: str


def emergency_call(project: Project, words: Words) -> EmergencyCall | None:
    """The call of this project; None where it names no number."""
    if project.emergency_phone is None:
        return None
    return EmergencyCall(line=emergency(project, words), number=dialled(project.emergency_phone))


def dialled(text: str) -> str:
    """The first telephone number of a text, in figures only, with the plus of a number that is dialled from abroad."""
    for found in _NUMBER.finditer(_HOURS.sub(";", text)):
        number = _AT_HOME.sub("", found[0]) if found[0].startswith("+") else found[0]
        figures = re.sub(r"[^0-9]", "", number)
        if _FEWEST <= len(figures) <= _MOST:
            return "+" * number.startswith("+") + figures
    return ""
