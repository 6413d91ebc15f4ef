"""Files of readings to records: finds the table in each, names its columns, and tells what cannot be read, by row and column.

A file is separated values, a workbook, or a filled form. Lines before the table may state what holds for all of it (`Serial;K4471`).
Nothing is read past the bounds of `text_table`. Called by the command `assess` and by whoever keeps what was recorded.
"""

from __future__ import annotations

import re
from collections import Counter
from collections.abc import Collection, Iterable, Iterator, Mapping
from dataclasses import dataclass, field
from hashlib import sha256
from itertools import chain
from operator import itemgetter

from specgen.assessing.cells import is_formula
from specgen.assessing.columns import COLUMNS, INSTRUMENT, PLACES
from specgen.assessing.faults import Faults
from specgen.assessing.forms import PRINTED, filled, is_form
from specgen.assessing.records import Record, Source
from specgen.assessing.text_table import NotReadableError, Row, refuse_many, rows_of, text_of
from specgen.assessing.workbook import is_workbook, sheets_of
from specgen.findings import Place
from specgen.source.characters import printable

_BEFORE_TABLE = 100
_FOR_ALL = frozenset({"point", "item", "unit", *INSTRUMENT, "on", "by", "coat", "area"})
"""Columns that a line before the table, or the command, may state for all rows."""
_HEADING = re.compile(r"(.*?)\s*[(\[]([^()\[\]]+)[)\]]\s*")
_CELL_LIMIT = 500
_VALUE = PLACES["value"]
_ALIKE = 3
"""Rows of two files that are alike by no chance, where no other row parts them."""


@dataclass(frozen=True, slots=True)
class Asked:
    """What the user says of the files: headings by our names, and what holds for every row; `job` and `state` are those a filled
    sheet has to be of, where they are known."""

    columns: Mapping[str, str] = field(default_factory=dict)
    fixed: Mapping[str, str] = field(default_factory=dict)
    job: str = ""
    state: str = ""


@dataclass(frozen=True, slots=True)
class File:
    """One file as given, with its name as printed."""

    name: str
    data: bytes

    @property
    def digest(self) -> str:
        return sha256(self.data).hexdigest()


def records_of(files: Iterable[File], asked: Asked, faults: Faults) -> list[Record]:
    """The rows of all files, in their order. A file is read once, whatever its format: one whose rows all stand in another is told."""
    found: list[Record] = []
    seen: dict[str, str] = {}
    sheets: dict[str, str] = {}
    before: list[tuple[str, Counter[tuple[str, ...]]]] = []
    given = list(files)
    for file in given:
        if file.digest in seen:
            faults.tell("RDG007", f"the same file as {seen[file.digest]}; it is read once", Place(file.name, 1, 1, 1))
            continue
        seen[file.digest] = file.name
        began = len(found)
        try:
            for record in _records(file, asked, faults, sheets):
                found.append(record)
                refuse_many(len(found))
        except NotReadableError as reason:
            faults.tell("RDG001", f"the file {reason}", Place(file.name, 1, 1, 1))
        if len(given) > 1:
            rows = Counter(_plain(record) for record in found[began:])
            other = next((name for name, there in before if rows.total() >= _ALIKE and rows <= there), None)
            if other is not None:
                what = f"every row of the file stands in {other} too; it is read once"
                faults.tell("RDG007", what, Place(file.name, 1, 1, 1))
                del found[began:]
            for name, there in before if other is None else ():
                if there.total() >= _ALIKE and there <= rows:
                    what = f"every row of the file stands in {file.name} too, which holds more; give one of them"
                    faults.tell("RDG007", what, Place(name, 1, 1, 1))
            before.append((file.name, rows))
    return found


def _plain(record: Record) -> tuple[str, ...]:
    """What a row says, however its figure is written."""
    return (
        *record.cells[:_VALUE],
        record.cells[_VALUE].replace(",", ".").removesuffix(".0"),
        *record.cells[_VALUE + 1 :],
    )


def _records(file: File, asked: Asked, faults: Faults, sheets: dict[str, str]) -> Iterator[Record]:
    if not file.data.strip():
        raise NotReadableError("is empty")
    if is_form(file.data):
        yield from _of_form(file, asked, faults, sheets)
        return
    if not is_workbook(file.data):
        yield from _of_table(file.name, rows_of(text_of(file.data)), asked, faults)
        return
    read = 0
    for sheet, rows in sheets_of(file.data):
        before = list(_first(rows))
        if _heading(before, asked) is not None:
            read += 1
            yield from _of_table(f"{file.name}[{printable(sheet)}]", chain(before, rows), asked, faults)
    if not read:
        faults.tell("RDG002", "no sheet has a row with the names of columns", Place(file.name, 1, 1, 1))


def _of_form(file: File, asked: Asked, faults: Faults, sheets: dict[str, str]) -> Iterator[Record]:
    """The rows of a filled sheet that somebody filled; `sheets` are those read before, by number."""
    form, place = filled(file.data), Place(file.name, 1, 1, 1)
    if form is None:
        raise NotReadableError("is a PDF that holds no filled record sheet of ours")
    if asked.job and form.about["job"] != asked.job:
        faults.tell("RDG016", f"the sheet is of the job {form.about['job'][:60]!r}; none of it is used", place)
        return
    if asked.state and form.about.get("state") != asked.state:
        faults.tell("RDG016", "the sheet was made before items or inspection points were changed", place)
    sheet = form.about.get("sheet", "")
    if sheet and sheets.setdefault(sheet, file.name) != file.name:
        faults.tell(
            "RDG007", f"sheet {sheet[:60]} was filled twice: see {sheets[sheet]}; none of this copy is used", place
        )
        return
    columns = {name: at + 1 for name, at in PLACES.items()}
    source = Source(file.name, columns, {}, {**form.fixed, **asked.fixed})
    kept = _Kept()
    for number, cells in sorted(form.rows.items()):
        if cells.keys() <= PRINTED:
            continue
        fixed = {**form.shared(number), **asked.fixed}
        held = tuple(kept[cells.get(name) or fixed.get(name, "")] for name in COLUMNS)
        record = Record(source, number, held)
        if kept.faulty.isdisjoint(held):
            yield record
        else:
            _tell(record, kept.faulty, faults)


def _of_table(name: str, rows: Iterator[Row], asked: Asked, faults: Faults) -> Iterator[Record]:
    before = list(_first(rows))
    heading = _heading(before, asked)
    if heading is None:
        known = ", ".join(COLUMNS)
        faults.tell("RDG002", f"no row of the file has the names of columns; known are {known}", Place(name, 1, 1, 1))
        return
    at, columns, units = heading
    fixed = {**_stated_before(before[:at]), **asked.fixed}
    if not {"spot", "reading"}.isdisjoint(columns) and "value" not in {*columns, *fixed}:
        left = [
            printable(cell)[:40]
            for number, cell in enumerate(before[at][1], 1)
            if cell and number not in columns.values()
        ]
        what = f"no column is known to hold the readings; {', '.join(left[:12]) or 'no heading'} was not understood"
        faults.tell("RDG002", what, Place(name, before[at][0], 1, 1))
        return
    own = {name for name, place in columns.items() if _own(_HEADING.sub(r"\1", before[at][1][place - 1])) == name}
    source = Source(name, columns, units, fixed, frozenset(columns.keys() - own))
    kept = _Kept()
    width = max(columns.values())
    first, *further = (place - 1 for place in columns.values())
    of_own = itemgetter(first, *further) if further else itemgetter(slice(first, first + 1))
    # every column has its cell: the row's own, else one of those that hold for the file, which stand behind the row's
    behind = tuple(kept[fixed.get(name, "")] for name in COLUMNS)
    own_at = {name: at for at, name in enumerate(columns)}
    of_row = itemgetter(*(own_at.get(name, len(columns) + at) for at, name in enumerate(COLUMNS)))
    filled_anew = [name for name in columns if fixed.get(name)]
    for number, cells in chain(before[at + 1 :], rows):
        if len(cells) < width:
            cells.extend("" for _ in range(width - len(cells)))
        stated = tuple(map(kept.__getitem__, of_own(cells)))
        if not any(stated):
            continue
        held = of_row(stated + behind)
        if filled_anew:
            held = tuple(text or fixed.get(name, "") for name, text in zip(COLUMNS, held, strict=True))
        record = Record(source, number, held)
        if not kept.faulty or kept.faulty.isdisjoint(held):
            yield record
        else:
            _tell(record, kept.faulty, faults)


class _Kept(dict[str, str]):
    """The texts of a table without the blanks around them, each kept once: the same few hundred come again and again.

    `faulty` are those that are not read.
    """

    def __init__(self) -> None:
        super().__init__()
        self.faulty: set[str] = set()

    def __missing__(self, text: str) -> str:
        plain = text.strip()
        self[text] = plain
        if is_formula(plain) or len(plain) > _CELL_LIMIT or printable(plain) != plain:
            self.faulty.add(plain)
        return plain


def _first(rows: Iterator[Row]) -> Iterator[Row]:
    for number, row in enumerate(rows, 1):
        yield row
        if number >= _BEFORE_TABLE:
            return


def _tell(record: Record, faulty: Collection[str], faults: Faults) -> None:
    """Why a row is not used."""
    column, text = next((name, text) for name, text in zip(COLUMNS, record.cells, strict=True) if text in faulty)
    if is_formula(text):
        id, what = "RDG004", f"the cell {column} holds the formula {printable(text[:60])!r}"
    else:
        id, what = "RDG003", f"the cell {column} holds more than {_CELL_LIMIT} signs, or signs that cannot be shown"
    own = {name: record.text(name) for name in ("point", "item") if record.text(name) not in faulty}
    faults.tell(id, what, record.place(column), point=own.get("point", ""), item=own.get("item", ""))


def _heading(rows: list[Row], asked: Asked) -> tuple[int, dict[str, int], dict[str, str]] | None:
    """Where the heading is, which column stands where, and their units: the row with the most known names, two at least, or one
    that was mapped."""
    best: tuple[int, dict[str, int], dict[str, str]] | None = None
    for at, (_, cells) in enumerate(rows):
        columns, units = _named(cells, asked)
        enough = len(columns) >= 2 or any(name in asked.columns for name in columns)
        if enough and (best is None or len(columns) > len(best[1])):
            best = (at, columns, units)
    return best


def _named(cells: list[str], asked: Asked) -> tuple[dict[str, int], dict[str, str]]:
    """What was mapped goes before a heading that has the name of a column itself."""
    columns: dict[str, int] = {}
    units: dict[str, str] = {}
    mapped = {_folded(heading): name for name, heading in asked.columns.items()}
    parted = [(number, cell.strip(), _HEADING.fullmatch(cell.strip())) for number, cell in enumerate(cells, 1)]
    for by_name in (False, True):
        for number, whole, found in parted:
            plain = found[1] if found else whole
            name = _own(plain) if by_name else mapped.get(_folded(whole)) or mapped.get(_folded(plain))
            if name is None or name in columns or number in columns.values():
                continue
            columns[name] = number
            if found:
                units[name] = found[2].strip()
    return columns, units


def _own(text: str) -> str | None:
    name = _folded(text).replace(" ", "_")
    return name if name in COLUMNS else None


def _folded(text: str) -> str:
    return " ".join(text.replace("_", " ").casefold().split())


def _stated_before(rows: list[Row]) -> dict[str, str]:
    """`Serial;K4471` or `Unit: um` in the lines before the table."""
    found: dict[str, str] = {}
    for _, cells in rows:
        filled = [cell.strip() for cell in cells if cell.strip()]
        if len(filled) == 1 and ":" in filled[0]:
            filled = [part.strip() for part in filled[0].split(":", 1)]
        if len(filled) == 2 and (name := _own(filled[0].rstrip(":"))) in _FOR_ALL and name is not None and filled[1]:
            found[name] = filled[1][:_CELL_LIMIT]
    return found
