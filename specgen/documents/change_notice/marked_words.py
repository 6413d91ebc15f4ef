"""Old and new text side by side, the words that changed marked. Called by the change notice.

Words are compared as wholes, so that a figure is never marked in part: 60 became 50, not the 6 a 5.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from difflib import SequenceMatcher

_MOST_WORDS = 800
"""Longer texts are marked as a whole: comparing takes the square of their length."""


@dataclass(frozen=True, slots=True)
class Run:
    """A stretch of text that is the same on both sides, or is not."""

    text: str
    changed: bool


def marked(old: str, new: str) -> tuple[tuple[Run, ...], tuple[Run, ...]]:
    """The runs of the old and of the new text; an empty text has none."""
    before, after = old.split(), new.split()
    if not before or not after:
        # beside nothing there is nothing to tell apart, and a line through a whole paragraph makes it hard to read
        return _whole(old, changed=False), _whole(new, changed=False)
    if len(before) + len(after) > _MOST_WORDS:
        return _whole(old, changed=True), _whole(new, changed=True)
    steps = SequenceMatcher(None, before, after, autojunk=False).get_opcodes()
    return (
        tuple(_runs((" ".join(before[i:j]), tag != "equal") for tag, i, j, _, _ in steps)),
        tuple(_runs((" ".join(after[i:j]), tag != "equal") for tag, _, _, i, j in steps)),
    )


def _whole(text: str, *, changed: bool) -> tuple[Run, ...]:
    return (Run(text, changed),) if text else ()


def _runs(pieces: Iterator[tuple[str, bool]]) -> Iterator[Run]:
    found = [(text, changed) for text, changed in pieces if text]
    for at, (text, changed) in enumerate(found):
        # the blank goes to what is not marked, where there is one
        yield Run(f" {text}" if at else text, changed)
