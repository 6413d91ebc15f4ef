"""Figures of a record beside the range in which a figure of their kind usually lies, from the table `usual_ranges`.

Called by the rules on figures. A row may count for some records alone, by a key that the entry, or a record around it, states.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from fractions import Fraction
from typing import NamedTuple

from specgen.model.node import Node
from specgen.model.outline import value_type
from specgen.model.spec import KINDS
from specgen.model.walk import Path, inner_record
from specgen.standards.reads import remembered
from specgen.standards.tables import Row, table
from specgen.units.count import Count
from specgen.units.quantity import CalendarSpan, Quantity, Range
from specgen.units.rounding import plain_text


class Unusual(NamedTuple):
    """A figure outside its usual range; `usual` is the range in words, `row` where it stands."""

    path: Path
    value: str
    usual: str
    row: Row


class _Bounds(NamedTuple):
    """A row as it is asked: its condition taken apart, its bounds in the base unit of the quantity that the leaf holds."""

    row: Row
    key: tuple[str, ...]
    words: frozenset[str]
    end: str
    low: Fraction | None
    high: Fraction | None


def unusual(record: Node) -> Iterator[Unusual]:
    """Every figure of the record that lies outside its usual range."""
    for steps, rows in _rows(type(record)):
        for path, value, around in stated_at(record, steps):
            broken = next((row for end, figure in _ends(value) if (row := _broken(rows, end, figure, around))), None)
            if broken is not None:
                yield Unusual(path, _said(_figure(value, broken["end"])), _range(broken), broken)


def stated_at(record: Node, steps: Sequence[str], path: Path = ()) -> Iterator[tuple[Path, object, tuple[Node, ...]]]:
    """Every value stated at a way of keys, through all entries of the lists on it, with the records around it, the outermost first."""
    value = getattr(record, steps[0])
    here = (*path, steps[0])
    if value is None:
        return
    if len(steps) == 1:
        yield here, value, (record,)
        return
    for below, way in ((value, here),) if isinstance(value, Node) else ((entry, (*here, entry.id)) for entry in value):
        for found, held, around in stated_at(below, steps[1:], way):
            yield found, held, (record, *around)


@remembered
def _rows(model: type[Node]) -> tuple[tuple[tuple[str, ...], tuple[_Bounds, ...]], ...]:
    """The rows of a kind of record, by the way of keys to the leaf."""
    kind = next((name for name, known in KINDS.items() if known is model), "")
    ways: dict[tuple[str, ...], list[_Bounds]] = {}
    for row in table("usual_ranges").rows:
        if row["record"] == kind:
            way = tuple(row["leaf"].split("."))
            ways.setdefault(way, []).append(_bounds(row, _quantity_at(model, way)))
    return tuple((way, tuple(rows)) for way, rows in ways.items())


def _bounds(row: Row, kind: str) -> _Bounds:
    key, _, words = row["only"].partition("=")
    low, high = (_limit(kind, row[end], row["unit"]) if row[end] else None for end in ("least", "most"))
    return _Bounds(row, tuple(key.split(".")) if key else (), frozenset(words.split("|")), row["end"], low, high)


def _quantity_at(model: type[Node], way: Sequence[str]) -> str:
    """The kind of quantity that a leaf measures, empty for a count, a ratio or a span of months."""
    for step in way[:-1]:
        inner = inner_record(model, step)
        if inner is None:
            raise KeyError(f"usual_ranges: {model.__name__} has no {'.'.join(way)}")
        model = inner
    leaf = value_type(model.model_fields[way[-1]])
    return leaf.quantity if leaf is not None else ""


def _limit(kind: str, digits: str, unit: str) -> Fraction:
    return Quantity.of(kind, Fraction(digits), unit).base if kind else Fraction(digits)


def _broken(rows: Sequence[_Bounds], end: str, number: Fraction, around: Sequence[Node]) -> Row | None:
    """The row that counts for one end of a value, where the figure lies outside its range."""
    found = next((row for row in rows if row.end in {"", end} and _counts(row, around)), None)
    if found is None:
        return None
    below = found.low is not None and number < found.low
    return found.row if below or (found.high is not None and number > found.high) else None


def _counts(row: _Bounds, around: Sequence[Node]) -> bool:
    """Whether the nearest record that has the key states one of the words."""
    if not row.key:
        return True
    at: object = next((record for record in reversed(around) if row.key[0] in type(record).model_fields), None)
    for step in row.key:
        at = getattr(at, step, None)
    return str(at).lower() in row.words


def _ends(value: object) -> Iterator[tuple[str, Fraction]]:
    """The figures of a value, with the end of the range they are; of a quantity its amount in the base unit."""
    if isinstance(value, Range):
        yield from ((end, limit.base) for end, limit in (("low", value.low), ("high", value.high)) if limit is not None)
    elif isinstance(value, Count):
        counts = (("low", value.low), ("high", value.high))
        yield from ((end, Fraction(limit)) for end, limit in counts if limit is not None)
    elif isinstance(value, CalendarSpan):
        yield "", Fraction(value.months)
    elif isinstance(value, tuple):
        # a mixing ratio: parts of the first to one of the second
        yield "", value[0] / value[1]
    elif isinstance(value, Quantity):
        yield "", value.base
    elif isinstance(value, Fraction | int):
        yield "", Fraction(value)


def _figure(value: object, end: str) -> object:
    """Of a range the end that a row is about, where it is about one."""
    return getattr(value, end) if end and isinstance(value, Range | Count) else value


def _said(value: object) -> str:
    if isinstance(value, tuple):
        return plain_text(value[0] / value[1])
    return plain_text(value) if isinstance(value, Fraction) else str(value)


def _range(row: Row) -> str:
    low, high = (f"{row[end]} {row['unit']}".strip() if row[end] else "" for end in ("least", "most"))
    where = f"{row['where']} " if row["where"] else ""
    if low and high:
        return f"{where}{low} to {high} is usual"
    return f"{where}{f'at least {low}' if low else f'at most {high}'} is usual"


def proportion(name: str) -> Fraction:
    """A figure of the table `usual_proportions`. Raises KeyError for a row that is not there."""
    return Fraction(table("usual_proportions").row("id", name)["value"])
