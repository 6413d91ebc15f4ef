"""Is it one person? Names as people write them, folded to one key. Called by `approvals`, `policy` and issuing.

Two spellings of one name must not count as two people, so the fold is coarse: titles, what stands in brackets, points, commas and
hyphens, capitals, accents, the order of the words, and letters that look alike (the confusables of Unicode Technical Standard 39,
by the library confusable_homoglyphs) make no other person. What is folded too far asks for a name in full.
"""

from __future__ import annotations

import re
import unicodedata
from functools import cache

# Forms of address and degrees that come and go with the same name. Common practice, no source.
_TITLES = frozenset(
    ["dr", "mr", "mrs", "ms", "miss", "mx", "prof", "professor", "ing", "dipl", "eng", "msc", "bsc", "phd", "sr", "jr"]
)
_BRACKETED = re.compile(r"\([^()]*\)|\[[^\[\]]*\]")
_ASCII = re.compile(r"[A-Za-z]+")
# one stroke in most type: i, l and the figure one; and the round sign
_STROKES = str.maketrans("l1|0", "iiio")


@cache
def person(name: str) -> str:
    """The key of a name; equal keys are taken as one person. Empty only for a name without a letter or figure."""
    text = unicodedata.normalize("NFKC", name)
    words = _words(_BRACKETED.sub(" ", text)) or _words(text)
    return " ".join(sorted(word.translate(_STROKES) for word in [w for w in words if w not in _TITLES] or words))


def stands_in(text: str, key: str) -> bool:
    """True where the words of a name stand side by side in a text, in whatever order; `key` is that of `person`."""
    wanted, words = key.split(), [word.translate(_STROKES) for word in _words(text)]
    first = range(len(words) - len(wanted) + 1) if wanted else range(0)
    return any(sorted(words[at : at + len(wanted)]) == wanted for at in first)


def names_person(principal: str, name: str) -> bool:
    """True where the principal of a key names the person: `ada.quill@example.org`, `ada@…`, `aquill@…` or `Ada Quill` for Ada Quill."""
    given, held = person(principal.partition("@")[0]).split(), person(name).split()
    if not given or not held:
        return False
    shortened = {"".join((*(other[0] for other in held if other is not word), word)) for word in held}
    return set(given) <= set(held) or (len(given) == 1 and given[0] in shortened)


def _words(text: str) -> list[str]:
    # before capitals go: a Cyrillic capital may look like a Latin one whose small letters differ
    plain = "".join(map(_plain, unicodedata.normalize("NFKD", text)))
    return re.findall(r"[^\W_]+", plain.casefold())


@cache
def _plain(sign: str) -> str:
    """The sign as a letter A to Z where it looks like one; nothing for an accent."""
    if sign.isascii():
        return sign
    if unicodedata.category(sign) in {"Mn", "Cf"}:
        return ""
    from confusable_homoglyphs import confusables

    alike = (str(other["c"]) for other in confusables.confusables_data.get(sign, ()))
    return next((other for other in alike if _ASCII.fullmatch(other)), sign)
