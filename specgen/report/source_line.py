"""A source line with a caret line under the stretch a finding means. Called by `as_text`.

Columns of a source count characters; columns of a screen do not: a tab runs to the next stop, a wide sign takes two, a
combining one none. A long line is cut on both sides, so that the stretch stays in sight.
"""

from __future__ import annotations

import unicodedata

from specgen.findings import Place
from specgen.source.characters import printable

SCREEN = 110
"""Columns of the screen that a source line may fill, the number in front included."""

_TAB = 8
_CUT = "…"


def source_line(place: Place) -> list[str]:
    """The source line behind its number, and the carets under the stretch; nothing where the line is not known."""
    if not place.text.strip():
        return []
    cells = _cells(printable(place.text))
    start = min(place.column - 1, len(cells))
    # an empty stretch, or one past the end of the line, still gets its caret
    end = max(min(place.end_column - 1, len(cells)), start + 1)
    front = f"{place.line:>5} | "
    first, last = _window(cells, start, end, SCREEN - len(front))
    before = _CUT if first else ""
    shown = before + "".join(cells[first:last]) + (_CUT if last < len(cells) else "")
    blanks = len(before) + sum(map(_width, cells[first:start]))
    carets = sum(max(_width(cell), 1) for cell in cells[start : min(end, max(last, start + 1))]) or 1
    return [(front + shown).rstrip(), " " * (len(front) - 2) + "| " + " " * blanks + "^" * carets]


def _cells(text: str) -> list[str]:
    """One string a character, as the screen shows it: a tab becomes the blanks it stands for."""
    cells: list[str] = []
    at = 0
    for sign in text:
        cell = " " * (_TAB - at % _TAB) if sign == "\t" else sign
        cells.append(cell)
        at += _width(cell)
    return cells


def _width(cell: str) -> int:
    if len(cell) != 1:
        return len(cell)
    if unicodedata.category(cell) in {"Mn", "Me", "Cf"}:
        return 0
    return 2 if unicodedata.east_asian_width(cell) in {"W", "F"} else 1


def _window(cells: list[str], start: int, end: int, room: int) -> tuple[int, int]:
    """The cells to show: all of them, or those around the stretch that fit beside the two signs of cutting."""
    if sum(map(_width, cells)) <= room:
        return 0, len(cells)
    room -= 2 * len(_CUT)
    first, last = min(start, len(cells)), start
    used = 0
    # the stretch itself goes first, then what stands in front of it and behind it in turn
    while last < min(end, len(cells)) and used + _width(cells[last]) <= room:
        used += _width(cells[last])
        last += 1
    grown = True
    while grown:
        grown = False
        if first > 0 and used + _width(cells[first - 1]) <= room:
            first -= 1
            used += _width(cells[first])
            grown = True
        if last < len(cells) and used + _width(cells[last]) <= room:
            used += _width(cells[last])
            last += 1
            grown = True
    return first, last
