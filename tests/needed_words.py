"""What every text that an expression finds must hold, read from the expression itself. Called by the tests of the tables of words and by
the campaign that renews their stems."""

from __future__ import annotations

import re._parser as parser
from collections.abc import Callable, Iterable
from functools import cache
from re._constants import ASSERT, ASSERT_NOT, AT, BRANCH, IN, LITERAL, MAX_REPEAT, MIN_REPEAT, SUBPATTERN
from typing import Any

Needed = frozenset[str]
"""Texts one of which is needed."""

_MOST = 64


Way = list[Any]
"""An expression taken apart, or one of the ways it is written as."""


def ways(words: str) -> list[Way]:
    """The ways that an expression in small letters is written as, `A` and `B` of `A|B`; what stands around them belongs to each."""
    items = list(_parsed(words))
    at = next((at for at, (kind, _) in enumerate(items) if kind is BRANCH), None)
    return [items] if at is None else [[*items[:at], *way, *items[at + 1 :]] for way in items[at][1][1]]


def needed(way: Way, worth: Callable[[Needed], Any]) -> list[Needed]:
    """Of each of these, a text that is found in this way holds one. Nothing is said of what need not be there; where it parts again,
    what is worth most of each part is taken together."""
    return [one for one in dict.fromkeys(_needed(way, worth)) if "" not in one]


def implied(way: Way, stems: Iterable[str]) -> bool:
    """True where it is certain that whatever is found in this way holds one of the stems."""
    return _implied(way, tuple(stems))


def hides_nothing(words: str, stems: str) -> bool:
    """True where it is certain that whatever an expression in small letters finds is let through by the stems of a cell."""
    cells = [[group.split("|") for group in cell.split("&")] for cell in stems.split(";")]
    return all(any(all(implied(way, group) for group in cell) for cell in cells) for way in ways(words))


@cache
def _parsed(words: str) -> Any:
    return parser.parse(words)


def _implied(items: Any, stems: tuple[str, ...]) -> bool:
    if any(all(any(stem in text for stem in stems) for text in run) for run in _runs(items)):
        return True
    return any(all(_implied(way, stems) for way in ways) for ways in _ways(items))


def _needed(items: Any, worth: Callable[[Needed], Any]) -> list[Needed]:
    found = _runs(items)
    for ways in _ways(items):
        each = [[one for one in _needed(way, worth) if "" not in one] for way in ways]
        if len(each) == 1:
            found += each[0]
        elif all(each):
            found.append(frozenset().union(*(max(way, key=worth) for way in each)))
    return found


def _ways(items: Any) -> list[list[Any]]:
    """The inner sequences that cannot be left out: of each list one is taken."""
    found = []
    for kind, held in items:
        if kind is BRANCH:
            found.append(list(held[1]))
        elif kind is SUBPATTERN:
            found.append([held[-1]])
        elif kind in {MAX_REPEAT, MIN_REPEAT} and held[0]:
            found.append([held[2]])
    return found


def _runs(items: Any) -> list[Needed]:
    """All texts that each run of a sequence may be, a run being what stands together and is one of few texts."""
    found: list[Needed] = []
    run = [""]
    for kind, held in items:
        texts = _texts(kind, held)
        if texts is not None and len(texts) * len(run) <= _MOST:
            run = [before + after for before in run for after in texts]
        else:
            found.append(frozenset(run))
            run = [""]
    return [*found, frozenset(run)]


def _texts(kind: Any, held: Any) -> list[str] | None:
    """All texts that an item of an expression finds, where they are few."""
    if kind in {AT, ASSERT, ASSERT_NOT}:
        # these take no letter, so that what is before and after stands side by side
        return [""]
    if kind is LITERAL:
        return [chr(held)]
    if kind is SUBPATTERN:
        return _whole(held[-1])
    if kind is IN and all(inner is LITERAL for inner, _ in held):
        return [chr(letter) for _, letter in held]
    if kind is BRANCH:
        ways = [_whole(way) for way in held[1]]
        return None if None in ways else list(dict.fromkeys(text for way in ways for text in way or ()))
    if kind in {MAX_REPEAT, MIN_REPEAT} and (held[0], held[1]) == (0, 1):
        once = _whole(held[2])
        return None if once is None else [*once, ""]
    return None


def _whole(items: Any) -> list[str] | None:
    run = [""]
    for kind, held in items:
        texts = _texts(kind, held)
        if texts is None or len(texts) * len(run) > _MOST:
            return None
        run = [before + after for before in run for after in texts]
    return run
