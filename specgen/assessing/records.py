"""One row of a file of readings, and the table it stands in. Made by `readings`, asked by everyone who judges or keeps them."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import dataclass, field
from operator import itemgetter

from specgen.assessing.columns import COLUMNS, PLACES
from specgen.findings import Place


@dataclass(frozen=True, slots=True)
class Source:
    """A table of a file: where each known column stands, from 1, the unit its heading names, and what holds for all its rows.

    `mapped` are the columns under a heading of the instrument's, whose unit we do not know unless it names one.
    """

    file: str
    columns: Mapping[str, int]
    units: Mapping[str, str] = field(default_factory=dict)
    fixed: Mapping[str, str] = field(default_factory=dict)
    mapped: frozenset[str] = frozenset()

    def unit_of(self, column: str) -> str:
        """The unit of figures in a column where their cells name none; our own columns have the unit they are defined in."""
        own = "" if column in self.mapped else COLUMNS[column].unit
        return self.units.get(column) or own


class Record:
    """A row: the text of every column of `COLUMNS`, what holds for its whole file where the row itself says nothing."""

    __slots__ = ("cells", "row", "source")

    def __init__(self, source: Source, row: int, cells: tuple[str, ...]) -> None:
        self.source = source
        self.row = row
        self.cells = cells

    def text(self, column: str) -> str:
        """What the row, or its file as a whole, says in a column; empty where nothing."""
        return self.cells[PLACES[column]]

    @property
    def part(self) -> str:
        """The number of its part in figures alone: `02` and `2.0` are part 2; empty where it names none."""
        return self.text("part").partition(".")[0].lstrip("0")

    def has(self, column: str) -> bool:
        """True where the row itself says something in a column."""
        return column in self.source.columns and bool(self.cells[PLACES[column]])

    def place(self, column: str = "") -> Place:
        number = self.source.columns.get(column, 1)
        return Place(self.source.file, self.row, number, number + 1)

    def unit_text(self, column: str) -> str:
        """The unit a figure of this row is in where its cell names none: that of its heading, or of the column `unit`."""
        return self.source.unit_of(column) or (self.text("unit") if column == "value" else "")


def columns(*names: str) -> Callable[[Record], tuple[str, ...]]:
    """Takes the texts of several columns out of a record at once: there may be hundreds of thousands."""
    found = itemgetter(*(PLACES[name] for name in names))

    def texts(record: Record) -> tuple[str, ...]:
        cells: tuple[str, ...] = found(record.cells)
        return cells

    return texts
