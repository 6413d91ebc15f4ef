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


def needed(words: str, worth: Callable[[Needed], Any]) -> list[Needed]:
    """For an expression in small letters: of each of these, a text that it finds holds one. Nothing is said of what need not be there;
    where an expression parts into ways, what is worth most of each is taken together."""
    return [one for one in dict.fromkeys(_needed(_parsed(words), worth)) if "" not in one]


def implied(words: str, stems: Iterable[str]) -> bool:
    """True where it is certain that whatever the expression finds holds one of the stems."""
    return _implied(_parsed(words), tuple(stems))


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
