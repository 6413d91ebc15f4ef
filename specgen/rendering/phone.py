"""What of a table fits the width of a phone, 390 px: judged by counting signs, since a page without script cannot ask its reader.

Templates call it through `environment`; the styles of `screen.css` go by the answers.
"""

from __future__ import annotations

import re
from collections.abc import Iterable, Sequence

# Measured in headless Chromium at 390 px: a line holds about 47 signs of a table beside the padding of four columns, and
# one of three columns 24 in two lines; a column of three holds a word of 11, and over two of them a name of 28.
_LINE = 42
_SHORT = 24
_WORD = 11
_NAME = 28
_MOMENT = re.compile(r"\d{4}-\d\d-\d\d \d\d:\d\d")
_DOES_NOT_APPLY = ("", "–")


def stays_a_table(headings: Sequence[str], rows: Iterable[Sequence[str]]) -> bool:
    """Whether a table is read as one on a phone: two columns of any text, or up to four of which every cell is short."""
    columns = list(zip(*rows, strict=True))
    if not 1 < len(headings) <= 4 or not columns:
        return False
    words = [max(map(_word, (heading, *cells))) for heading, cells in zip(headings, columns, strict=True)]
    if len(headings) == 2:
        return sum(words) <= _LINE
    cells = [max(map(_length, cells)) for cells in columns]
    return max(cells) <= _SHORT and sum(map(max, zip(words, cells, strict=True))) <= _LINE


def cell_class(cell: str, heading: str = "") -> str:
    """The class of a cell where its row is a card: it stands beside others, takes a whole line (none), or is left out.

    `heading` is what stands above it there.
    """
    if cell in _DOES_NOT_APPLY:
        return "left-out"
    if _MOMENT.search(cell):  # day and hour stay in one line, which is as wide as two cells
        return ""
    fits = _length(cell) <= _SHORT and _word(cell.replace("-", " ")) <= _WORD and len(heading) <= _NAME
    return "short" if fits else ""


def _length(text: str) -> int:
    return max(map(len, text.split("\n")))


def _word(text: str) -> int:
    return max(map(len, text.split()), default=0)
