"""Bounds of the author's Markdown: what takes too long to read or print, told from the text alone.

Called by `rendering.markdown` before it converts a text, by the rule DOC001, which tells the author where it stands, and
(`BLANKS`) by whatever asks how long a word is.
"""

from __future__ import annotations

import re
from dataclasses import dataclass

MOST_CHARACTERS = 2_000
LONGEST_RUN = 20
DEEPEST_NESTING = 10

# Where layout may break a line. Blanks of another width or kind (U+00A0, U+2009, U+202F, U+3000) hold a word together.
BLANKS = re.compile("[ \t\n\r\f\u200b]+")

# The time these take grows with the square or cube of their number: 8,000 opening brackets need a quarter of a minute.
_RUN = re.compile(r"([\[(!*_`>#])\1{" + str(LONGEST_RUN) + ",}")
_LINE_START = re.compile(r"(?: {4}|\t|[ ]{0,3}(?:>|[-+*][ \t]|\d{1,9}\.[ \t]))*")
_LEVEL = re.compile(r" {4}|\t|>|[-+*][ \t]|\d{1,9}\.[ \t]")


@dataclass(frozen=True, slots=True)
class ProseFault:
    """What is wrong with a text, to stand after "the text", and what to do, as a whole sentence."""

    what: str
    remedy: str


def prose_fault(text: str) -> ProseFault | None:
    """The first fault of a text, or None.

    More than 2,000 characters, more than 20 of one of `[ ( ! * _ ` > #` in a row, or lists, quotations or brackets
    nested more than 10 deep.
    """
    if len(text) > MOST_CHARACTERS:
        return ProseFault(
            f"has {len(text):,} characters; the maximum is {MOST_CHARACTERS:,}", "Divide it into several texts."
        )
    if run := _RUN.search(text):
        return ProseFault(f"contains more than {LONGEST_RUN} “{run[1]}” in a row", "Shorten the run.")
    if _nested_too_deep(text):
        return ProseFault(f"nests lists, quotations or brackets more than {DEEPEST_NESTING} deep", "Flatten it.")
    return None


def _nested_too_deep(text: str) -> bool:
    for line in text.splitlines():
        start = _LINE_START.match(line)
        if start and len(_LEVEL.findall(start[0])) > DEEPEST_NESTING:
            return True
    for opening, closing in ("[]", "()"):
        if text.count(opening) <= DEEPEST_NESTING:
            continue
        depth = 0
        for sign in text:
            depth = depth + 1 if sign == opening else max(0, depth - (sign == closing))
            if depth > DEEPEST_NESTING:
                return True
    return False
