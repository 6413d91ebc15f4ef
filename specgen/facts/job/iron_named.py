"""The steel tool or abrasive that words name. Called by the rule on iron left on other metals, and where others give way to it."""

from __future__ import annotations

import re

_OF_STEEL = re.compile(
    r"\b(wire[ -]?(brush|wheel)|steel (wire )?brush|steel wool|(steel|iron)[ -](grit|shot|abrasive)|chilled iron)",
    re.IGNORECASE,
)
_SOUND = re.compile(r"\b(stainless|brass|bronze|copper|nylon|no|not|never|without|avoid|instead of)\b", re.IGNORECASE)
_SENTENCE = re.compile(r"[.;!\n]+")


def iron_named(text: str) -> str:
    """Its name in small letters; empty where each sentence forbids it or names another metal."""
    for sentence in _SENTENCE.split(text):
        found = _OF_STEEL.search(sentence)
        if found is not None and not _SOUND.search(sentence):
            return found[0].lower()
    return ""
