"""What record sheets are laid down in: lines, tables, and the rows behind them with the fields of each. Called by `rows` and `work`.

A row of the form is a row of the CSV beside it. What it is about stands in hidden fields; the rest is filled in.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from specgen.assessing.columns import COLUMNS
from specgen.assessing.forms import field_name
from specgen.documents.parts.pictures import PictureView


@dataclass(frozen=True, slots=True, kw_only=True)
class SheetLine:
    """What is printed, and the names of the fields to fill; an empty name is no field."""

    printed: tuple[str, ...]
    fields: tuple[str, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class SheetTable:
    """Lines under `heads`, the printed ones of these `widths`; `shared` are (name, field) of what holds for all of them.

    `note` says what passes; `pictures` show the spots by their marks, where they were not shown before.
    """

    title: str
    note: str
    heads: tuple[str, ...]
    shared: tuple[tuple[str, str], ...]
    lines: tuple[SheetLine, ...]
    widths: tuple[str, ...] = ()
    pictures: tuple[PictureView, ...] = ()


class Rows:
    """The rows laid down so far: what each is about, by column, and the same by the names of hidden fields."""

    def __init__(self) -> None:
        self.printed: list[dict[str, str]] = []
        self.hidden: dict[str, str] = {}

    def enter(self, **about: str) -> int:
        """The number of a new row."""
        self.printed.append({column: text for column, text in about.items() if text})
        number = len(self.printed)
        self.hidden.update({field_name(column, number): text for column, text in self.printed[-1].items()})
        return number

    def fields(self, number: int, *columns: str) -> tuple[str, ...]:
        return tuple(field_name(column, number) for column in columns)

    def typed(self) -> Iterator[tuple[str, ...]]:
        """The rows for those who type, by the columns of a file of readings."""
        return (tuple(row.get(column, "") for column in COLUMNS) for row in self.printed)
