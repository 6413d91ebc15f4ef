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
from specgen.model.project import PageSize

_HEAD, _CHARACTER, _COAT, _POINT, _READING_ROW, _READING_SHEET, _BATCH_ROW = (
    0.327,
    7.69e-5,
    0.102,
    0.046,
    0.017,
    0.062,
    0.031,
)
# how much more a larger type takes, and a side of Letter; what may be told wrong
_LARGER = (("nine", 1.14), ("eight-and-half", 1.09))
_LETTER, _DOUBT = 1.06, 0.06


def type_size(work: CardWork, records: Records, page: PageSize) -> str:
    told = _HEAD + _characters(work) * _CHARACTER + len(work.coats) * _COAT + _points(work) * _POINT
    told += sum(_READING_SHEET + len(sheet.rows) * _READING_ROW for sheet in records.readings)
    told += sum(1 + len(sheet.rows) for sheet in records.batches) * _BATCH_ROW
    if page is PageSize.LETTER:
        told *= _LETTER
    # what may just fit is tried in the smallest type, with lower boxes to write in
    sides = ceil(told - _DOUBT)
    smallest = "eight close" if told + _DOUBT > sides else "eight"
    return next((size for size, factor in _LARGER if told * factor + _DOUBT <= sides), smallest)


def _points(work: CardWork) -> int:
    beside = (work.at_first, work.prepared, work.applying, work.finished)
    return sum(map(len, beside)) + sum(len(coat.checks) + len(coat.sanded) for coat in work.coats)


def _characters(told: object) -> int:
    if isinstance(told, str):
        return len(told)
    if is_dataclass(told):
        return sum(_characters(getattr(told, one.name)) for one in fields(told))
    return sum(map(_characters, told)) if isinstance(told, Sequence) else 0
