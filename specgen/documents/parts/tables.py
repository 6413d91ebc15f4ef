"""A table as finished text; a column in which every cell is empty is left out. Called by the views."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass, field


@dataclass(frozen=True, slots=True)
class Column:
    """`width` is a class of the style sheets, `w-5` to `w-60`, or empty; numbers stand to the right."""

    heading: str
    width: str = ""
    numeric: bool = field(default=False, kw_only=True)


@dataclass(frozen=True, slots=True, kw_only=True)
class TableView:
    """`rows` are as long as `columns`; a line break in a cell is kept in print."""

    caption: str
    columns: tuple[Column, ...]
    rows: tuple[tuple[str, ...], ...]


def table_view(caption: str, columns: Sequence[Column], rows: Iterable[Sequence[str]], empty: str = "") -> TableView:
    """The table without its empty columns; `empty` stands in the empty cells of the others, as a dash where nothing applies."""
    whole = [tuple(row) for row in rows]
    kept = [at for at in range(len(columns)) if any(row[at] for row in whole)]
    return TableView(
        caption=caption,
        columns=tuple(columns[at] for at in kept),
        rows=tuple(tuple(row[at] or empty for at in kept) for row in whole),
    )
