"""Where a pull-off broke, from the letters a report writes: A is the substrate, B the first coat, Y the glue, Z the dolly, and two with
a stroke the bond between them.

Called by the report of a test, which spells the letters out, and by the rule on letters that the panels have no coat for.
"""

from __future__ import annotations

import re
from collections.abc import Iterator
from typing import NamedTuple

from specgen.model.test_report import DoneTest, PanelSeries

_PLACE = re.compile(r"(?<![A-Za-z])(?P<code>[A-Z-](?:/[A-Z])?)(?![A-Za-z])")
SUBSTRATE, GLUE, DOLLY, LAST = "A", "Y", "Z", "-"
_FIRST_COAT = ord("B")


class Letter(NamedTuple):
    """One letter: `coat` is the number of the coat it is for, from the substrate outwards; 0 where it is for none."""

    letter: str
    coat: int


class Place(NamedTuple):
    """A place of failure as written, with the letter it is, or the two it lies between."""

    code: str
    letters: tuple[Letter, ...]


def places_of(done: DoneTest, series: PanelSeries) -> tuple[Place, ...]:
    """Every place that the results of a test name, from the substrate outwards."""
    codes = {code for one in done.results for code in codes_in(one.mode or "")}
    return tuple(Place(code, tuple(_letter(letter, series) for letter in code.split("/"))) for code in sorted(codes))


def codes_in(mode: str) -> Iterator[str]:
    """`B`, `A/B`: the places that one result names."""
    for part in mode.split(","):
        found = _PLACE.match(part.strip())
        if found is not None and (found["code"] != LAST):
            yield found["code"]


def beyond(place: Place, series: PanelSeries) -> bool:
    """True where a place is of a coat that the panels do not have."""
    return any(letter.coat > len(series.coats) for letter in place.letters)


def _letter(letter: str, series: PanelSeries) -> Letter:
    if letter in {SUBSTRATE, GLUE, DOLLY}:
        return Letter(letter, 0)
    return Letter(letter, len(series.coats) if letter == LAST else ord(letter) - _FIRST_COAT + 1)
