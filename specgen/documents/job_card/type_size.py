"""The size of the type of a job card: the largest that takes no more sides than the smallest does.

A card is set once. How many sides it takes is told from what stands on it by the weights below, which were measured on cards of one to
four coats and of one to 7 points, in parts of a side of A4 at 8 pt; what they told lay within 0.05 of what was set.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import fields, is_dataclass
from math import ceil

from specgen.documents.job_card.records import Records
from specgen.documents.job_card.work import CardWork
from specgen.documents.parts.cell_lines import cell_lines
from specgen.model.project import PageSize

_HEAD, _CHARACTER, _COAT, _POINT, _READING_ROW, _READING_SHEET, _BATCH_ROW = (
    0.23,
    1.087e-4,
    0.0875,
    0.043,
    0.0166,
    0.055,
    0.031,
)
# of the table of what to wear: its head, a line, what stands about a row; its columns, and the width of the side in points
_WEAR_HEAD, _WEAR_LINE, _WEAR_ROW = 0.018, 0.0113, 0.002
_WEAR_COLUMNS, _WIDTH = (0.13, 0.29, 0.24, 0.2, 0.14), 550
# how much more a larger type takes, and a side of Letter; what may be told wrong
_LARGER = (("nine", 1.14), ("eight-and-half", 1.09))
_LETTER, _DOUBT = 1.045, 0.05
# what the smallest type takes with lower boxes to write in
_CLOSE = 0.93


def type_size(work: CardWork, records: Records, page: PageSize) -> str:
    high = told(work, records, page)
    # what may just fit is tried in the smallest type, with lower boxes
    sides = ceil(high * _CLOSE - _DOUBT)
    smallest = "eight close" if high + 2 * _DOUBT > sides else "eight"
    return next((size for size, factor in _LARGER if high * factor + _DOUBT <= sides), smallest)


def told(work: CardWork, records: Records, page: PageSize) -> float:
    """How many sides the card takes at 8 pt."""
    high = (
        _HEAD
        + (_characters(work) - _characters(work.wear)) * _CHARACTER
        + len(work.coats) * _COAT
        + _points(work) * _POINT
    )
    high += len(work.wear.rows) and _WEAR_HEAD
    high += sum(
        max(cell_lines(cell, _WIDTH * share, 8) for cell, share in zip(row, _WEAR_COLUMNS, strict=True)) * _WEAR_LINE
        + _WEAR_ROW
        for row in work.wear.rows
    )
    high += sum(_READING_SHEET + len(sheet.rows) * _READING_ROW for sheet in records.readings)
    high += sum(1 + len(sheet.rows) for sheet in records.batches) * _BATCH_ROW
    if page is PageSize.LETTER:
        high *= _LETTER
    return high


def _points(work: CardWork) -> int:
    beside = (work.at_first, work.prepared, work.applying, work.finished)
    return sum(map(len, beside)) + sum(len(coat.checks) + len(coat.sanded) for coat in work.coats)


def _characters(told: object) -> int:
    if isinstance(told, str):
        return len(told)
    if is_dataclass(told):
        return sum(_characters(getattr(told, one.name)) for one in fields(told))
    return sum(map(_characters, told)) if isinstance(told, Sequence) else 0
