"""The size of the type of a hazard card: the largest with which it stays on the fewest sides.

A card is set once. How high it stands is told from its text by the measures of `hazard.css`, given here beside the names of its sizes.
"""

from __future__ import annotations

from itertools import count
from math import ceil
from typing import TYPE_CHECKING, NamedTuple

from specgen.documents.parts.cell_lines import cell_lines
from specgen.model.project import PageSize

if TYPE_CHECKING:
    from specgen.documents.hazard_card.view import HazardCard


class _Size(NamedTuple):
    """In points: type and line of the text, of what hurts and of what to wear; `around` is what stands about a row of either, `head`
    the heading with the number to call and the room for the climate, `between` what stands about each further block."""

    name: str
    text: tuple[float, float]
    hurts: tuple[float, float]
    wear: tuple[float, float]
    around: tuple[float, float]
    head: float
    between: float


_SIZES = (
    _Size("large", (12, 14.4), (17, 19.6), (10.5, 12.1), (5.1, 3.4), 160, 1.6),
    _Size("plain", (10.5, 12.6), (14.5, 16.7), (9.5, 10.9), (5.1, 3.4), 140, 1.6),
    _Size("close", (9.2, 10.8), (12, 13.8), (8.4, 9.4), (3.4, 3.4), 118, 1.5),
    _Size("snug", (8.6, 9.5), (10.8, 11.7), (8.2, 8.9), (1.7, 2), 118, 1.5),
    _Size("tight fair", (8.3, 9), (10, 10.5), (8.1, 8.6), (1.2, 1.5), 86, 0.9),
    _Size("tight", (8, 8.3), (9.6, 9.8), (8, 8.3), (1.2, 1.1), 72, 0.3),
    _Size("tight least", (8, 8), (8.8, 8.8), (8, 8), (0.6, 0.8), 24, 0),
)
# width and height of a side inside its margins, and of the type the mean width of a sign
_SIDE = {PageSize.A4: (550.0, 800.0), PageSize.LETTER: (566.0, 751.0)}
_WIDE = 0.435
_COLUMNS = (0.1, 0.08, 0.285, 0.22, 0.19, 0.125)
# the share of the last side that is kept free, for what is told wrong; what may just fit is tried in the smallest type
_DOUBT, _TRIED = 0.005, 0.006


def type_size(card: HazardCard, page: PageSize) -> str:
    width, height = _SIDE[page]
    told = [(size, _height(card, size, width)) for size in _SIZES]
    free = {size.name: -_TRIED if size is _SIZES[-1] else _DOUBT for size in _SIZES}
    return next(size.name for sides in count(1) for size, high in told if high <= (sides - free[size.name]) * height)


def _height(card: HazardCard, size: _Size, width: float) -> float:
    (text, line), (row, padding) = size.text, size.around
    told = [
        card.products,
        "".join(f"{name} {act} " for name, act in card.first_aid),
        card.re_entry,
        *(" ".join((task, *texts)) for task, texts in card.cautions),
        " ".join(cell for line_of in card.supplies.rows for cell in line_of),
        *(" ".join(pair) * 3 for pair in card.entry),
    ]
    high = size.head + sum(_lines(said, text, width) * line + size.between for said in told if said)
    high += sum(_lines(f"{said} {codes}", size.hurts[0], width) * size.hurts[1] + row for said, codes in card.hurts)
    high += (len(card.wear.rows) and 2 * size.wear[1] + 5) + sum(
        max(cell_lines(cell, width * share, size.wear[0]) for cell, share in zip(cells, _COLUMNS, strict=True))
        * size.wear[1]
        + padding
        for cells in card.wear.rows
    )
    return high + (1 + _lines("; ".join(card.data_sheets), 8, width)) * 9


def _lines(said: str, type_of: float, width: float) -> int:
    return ceil(len(said) * type_of * _WIDE / width)
