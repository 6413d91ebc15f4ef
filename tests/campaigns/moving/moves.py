"""What a value may be changed to, by its type: four times as large or small, its unit the next of its kind, another word, gone."""

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import dataclass
from fractions import Fraction

from specgen.model.field_types import Strict
from specgen.units.kinds import KINDS, SPELLINGS
from tests.campaigns.moving.folder import Leaf

TIMES, OVER, UNIT, WORD, GONE = "x4", "/4", "next unit", "next word", "gone"
GRAVE = (TIMES, OVER)

_NUMBER = re.compile(r"(?<![A-Za-z0-9])(?<!\d\.)-?\d+(?:\.\d+)?")
_WHOLE = {"whole number", "whole number or range of them", "number of months or years"}
_PLAIN = _WHOLE | {"decimal number", "mixing ratio"}


@dataclass(frozen=True)
class Move:
    """One change of one value; without a text the value is left out. `end` says which end of a range alone was moved."""

    leaf: Leaf
    sort: str
    text: str | None
    end: str = ""

    def __str__(self) -> str:
        return f"{self.leaf}: {self.leaf.text} -> {self.text if self.text is not None else 'left out'}"


def moves(leaf: Leaf) -> Iterator[Move]:
    """Every move of a value; none of ids, codes, dates and prose, which measure and choose nothing."""
    if leaf.name == "id":
        return
    kind, text = leaf.kind, leaf.text
    if kind.quantity or kind.name in _PLAIN:
        yield from _larger_and_smaller(leaf)
        unit = _next_unit(kind, text)
        if unit is not None:
            yield Move(leaf, UNIT, unit)
    elif (word := _next_word(kind, text)) is not None:
        yield Move(leaf, WORD, word)
    else:
        return
    yield Move(leaf, GONE, None)


def _larger_and_smaller(leaf: Leaf) -> Iterator[Move]:
    whole = leaf.kind.name in _WHOLE
    found = list(_NUMBER.finditer(leaf.text))
    if leaf.kind.name == "mixing ratio":
        found = found[:1]
    # of a range both ends move, and then the one alone by which it grows wider
    chosen = {(TIMES, ""): found, (OVER, ""): found}
    if len(found) == 2 and ".." in leaf.text:
        chosen |= {(TIMES, "upper end"): found[1:], (OVER, "lower end"): found[:1]}
    for (sort, end), numbers in chosen.items():
        text = leaf.text
        for number in reversed(numbers):
            told = _times(number[0], Fraction(4) if sort == TIMES else Fraction(1, 4), whole)
            text = text[: number.start()] + told + text[number.end() :]
        if text != leaf.text:
            yield Move(leaf, sort, text, end)


def _times(digits: str, factor: Fraction, whole: bool) -> str:
    value = Fraction(digits) * factor
    if whole:
        # a quarter of one is not a whole number: what is nearest and counts something
        return str(max(round(value), min(int(digits), 1)))
    text = f"{float(value):.6f}".rstrip("0").rstrip(".")
    return text or "0"


def _next_unit(kind: Strict, text: str) -> str | None:
    if not kind.quantity:
        return None
    known = KINDS[kind.quantity]
    stands = next((u for u in sorted(known.units, key=len, reverse=True) if text.endswith(f" {u}")), None)
    if stands is None:
        return None
    offered = known.offered
    at = offered.index(SPELLINGS.get(stands, stands))
    new = offered[(at + 1) % len(offered)]
    return text.replace(f" {stands}", f" {new}") if new != offered[at] else None


def _next_word(kind: Strict, text: str) -> str | None:
    words = [str(word) for word in kind.schema().get("enum", ())]
    if text not in words or len(words) < 2:
        return None
    return words[(words.index(text) + 1) % len(words)]
