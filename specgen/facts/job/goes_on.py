"""Whether an instruction for a fault lets it stand and the work go on. Called by the rules on failed inspections and on late coats."""

from __future__ import annotations

import re

_GOES_ON = re.compile(
    r"\baccept(?:ed)?\b|\bleave (?:it |them )?as\b|\bas (?:it|they) (?:is|are)\b|\bcarry on\b|\bgo on\b|\bcontinue\b|\bproceed\b"
    r"|\bignore\b|\bno (?:action|measures?|preparation|abrading|sanding)\b|\bnothing (?:is done|to do|needed)\b|\bcovers? it\b"
    r"|\b(?:coat|paint) (?:it )?over\b"
    r"|\bwithout (?:any |further |more |other )?(?:preparation|abrading|sanding|keying|work|treatment|ado)\b"
    r"|\bmark(?:ed)? and leave\b|\bleave(?: it| them)?\W*$"
    r"|^\W*(?:note|record|enter|write|report|tell|inform)\b",
    re.I,
)
_WORK = (
    r"repair|abrade|sand|scuff|key|strip|sweep|blast|clean|wash|degrease|wipe|repeat|recoat|re-?\w*coat|remove|recover"
)
_STOPS = re.compile(
    rf"\b(?:stop|hold|wait|ask|call|not|never|only|until|once|after|when|before|unless|written|in writing|concession|agree\w*|engineer|"
    rf"again|new|if|extend|{_WORK})\b",
    re.I,
)


def lets_stand(text: str) -> bool:
    """True where a text accepts what is wrong or works on, and names neither a work that mends it nor who decides."""
    return _GOES_ON.search(text) is not None and _STOPS.search(text) is None
