"""Parts of a workbook read as a stream: the rows of a sheet, every value as it is kept and a formula as a sign that there is one, and
the elements of the small parts that say what sheets, texts and styles there are.

The library that knows workbooks makes objects of every cell, which takes several times as long. Called by `workbook`.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping, Sequence
from typing import IO, Protocol, TypeVar
from xml.parsers import expat

Kept = Callable[[str, str], str]
"""From a number as it is kept, and the style of its cell, to its text."""
_AT_ONCE = 1 << 16

Element = tuple[tuple[str, ...], Mapping[str, str], str]
"""The names from the root to an element, its attributes, and the text in it; names without what stands before a colon."""
One = TypeVar("One", covariant=True)


class SheetError(Exception):
    """The part is none of a workbook."""


class _Taking(Protocol[One]):
    def begins(self, name: str, about: dict[str, str], /) -> None: ...
    def ends(self, name: str, /) -> None: ...
    def says(self, text: str, /) -> None: ...
    def take(self) -> Sequence[One]: ...


def rows_of_sheet(
    part: IO[bytes], shared: Sequence[str], number: Kept, most_columns: int
) -> Iterator[tuple[int, list[str]]]:
    """Every row that is kept, with its number; cells past `most_columns` are left out. Raises SheetError."""
    return _read(part, _Rows(shared, number, most_columns))


def elements(part: IO[bytes]) -> Iterator[Element]:
    """Every element as it ends. Raises SheetError."""
    return _read(part, _Elements())


def _read(part: IO[bytes], found: _Taking[One]) -> Iterator[One]:
    parser = expat.ParserCreate()
    parser.buffer_text = True
    parser.StartElementHandler, parser.EndElementHandler = found.begins, found.ends
    parser.CharacterDataHandler = found.says
    # no entity is read: none stands in a workbook that is one
    parser.StartDoctypeDeclHandler = _refuse
    try:
        while piece := part.read(_AT_ONCE):
            parser.Parse(piece, False)
            yield from found.take()
        parser.Parse(b"", True)
    except expat.ExpatError as reason:
        raise SheetError from reason
    yield from found.take()


def _refuse(*_: object) -> None:
    raise SheetError


class _Elements:
    """Elements with their names from the root."""

    def __init__(self) -> None:
        self._open: list[tuple[str, dict[str, str], list[str]]] = []
        self._ended: list[Element] = []

    def take(self) -> Sequence[Element]:
        ended, self._ended = self._ended, []
        return ended

    def begins(self, name: str, about: dict[str, str]) -> None:
        own = {key.rpartition(":")[2]: text for key, text in about.items()}
        self._open.append((name.rpartition(":")[2], own, []))

    def says(self, text: str) -> None:
        self._open[-1][2].append(text)

    def ends(self, _name: str) -> None:
        path = tuple(one[0] for one in self._open)
        _, about, heard = self._open.pop()
        self._ended.append((path, about, "".join(heard)))


class _Rows:
    """What the signs of a sheet come to: rows that are whole, and the one that is read."""

    def __init__(self, shared: Sequence[str], number: Kept, most_columns: int) -> None:
        self._shared, self._number, self._most = shared, number, most_columns
        self._rows: list[tuple[int, list[str]]] = []
        self._row, self._cells = 0, list[str]()
        self._column, self._kind, self._style = 0, "", ""
        self._formula = self._hearing = self._aside = False
        self._heard: list[str] = []
        self._columns: dict[str, int] = {}

    def take(self) -> list[tuple[int, list[str]]]:
        rows, self._rows = self._rows, []
        return rows

    def begins(self, name: str, about: dict[str, str]) -> None:
        match name.rpartition(":")[2]:
            case "c":
                self._column = self._place(about.get("r", ""))
                self._kind, self._style = about.get("t", "n"), about.get("s", "")
                self._formula = self._aside = False
                self._heard = []
            case "v" | "t":
                self._hearing = not (self._aside or self._formula)
            case "f":
                self._formula = self._hearing = True
            case "rPh":
                self._aside = True
            case "row":
                self._row = int(about["r"]) if about.get("r", "").isdecimal() else self._row + 1
                self._column, self._cells = 0, []

    def says(self, text: str) -> None:
        if self._hearing:
            self._heard.append(text)

    def ends(self, name: str) -> None:
        match name.rpartition(":")[2]:
            case "v" | "t" | "f":
                self._hearing = False
            case "rPh":
                self._aside = False
            case "c":
                if (self._heard or self._formula) and 0 < self._column <= self._most:
                    self._cells.extend("" for _ in range(self._column - 1 - len(self._cells)))
                    self._cells.append(self._text())
            case "row":
                self._rows.append((self._row, self._cells))

    def _text(self) -> str:
        kept = "".join(self._heard)
        if self._formula:
            return f"={kept}"
        match self._kind:
            case "s":
                try:
                    return self._shared[int(kept)]
                except (ValueError, IndexError):
                    raise SheetError from None
            case "n":
                return self._number(kept, self._style)
            case "b":
                return str(kept == "1")
        return kept

    def _place(self, reference: str) -> int:
        """The column of `AB12`; the next one where a cell names none."""
        letters = reference.rstrip("0123456789")
        if not letters:
            return self._column + 1
        if letters not in self._columns:
            number = 0
            for letter in letters.upper():
                number = number * 26 + ord(letter) - 64
            self._columns[letters] = number
        return self._columns[letters]
