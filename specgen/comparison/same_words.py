"""When two free texts say the same: only what cannot change the meaning is looked past. Called by `effects`.

That is a number spelled out or written, or both as in `two (2)`; blanks, the kind of a quote or dash and the last full stop; the
capital that begins a sentence and a word set in capitals. A comma stays a comma: `no, mask` and `no mask` are two things.
"""

from __future__ import annotations

import re

# "one" is left out: it is a pronoun as well, and "no one" is not "no. 1"
_SPELLED = {
    "two": "2", "three": "3", "four": "4", "five": "5", "six": "6", "seven": "7", "eight": "8", "nine": "9", "ten": "10",
    "eleven": "11", "twelve": "12", "fifteen": "15", "twenty": "20", "thirty": "30", "forty": "40", "fifty": "50",
}  # fmt: skip
_SAID_TWICE = re.compile(r"\b(\d+) \((\d+|[a-z]+)\)")
_SENTENCE = re.compile(r"(^|[.!?] )([A-Z])(?=[a-z])")
_SHOUTED = re.compile(r"\b[A-Z]{4,}\b")
_WORD = re.compile(r"(?<![\w-])[A-Za-z]+(?![\w-])")
_SIGNS = str.maketrans({"’": "'", "‘": "'", "“": '"', "”": '"', "‐": "-", "‑": "-", "–": "-"})


def said_alike(old: str, new: str) -> bool:
    """True where the two texts differ in nothing but how the same words are written."""
    return _plain(old) == _plain(new)


def _plain(text: str) -> str:
    flat = " ".join(text.translate(_SIGNS).split()).removesuffix(".")
    lower = _SHOUTED.sub(lambda found: found[0].lower(), flat)
    lower = _SENTENCE.sub(lambda found: found[1] + found[2].lower(), lower)
    counted = _WORD.sub(lambda found: _SPELLED.get(found[0], found[0]), lower)
    return _SAID_TWICE.sub(lambda found: found[1] if found[1] == found[2] else found[0], counted)
