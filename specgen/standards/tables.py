"""The published tables: every figure from outside that the code works with, each with document, clause and basis.

One table a file in `tables/`; a row is a list of cells under `columns`, or a mapping of them. A table drawn from several
documents names the document `several` and gives each row its own. A table is read when it is first asked for. Called by
`trade`, rules and views.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from functools import cache
from importlib import resources

from specgen.source.reader import read_shipped
from specgen.standards.citations import Basis, Citation
from specgen.standards.reads import note

Row = Mapping[str, str]

_FOLDER = "tables"
_HEADS = ("title", "document", "edition", "clause", "basis")


@dataclass(frozen=True, slots=True)
class Content:
    """What stands in a table. `rows` map each of `columns` to the text of its cell; a cell may be empty."""

    title: str
    document: str
    edition: str
    clause: str
    basis: Basis
    columns: tuple[str, ...]
    rows: tuple[Row, ...]


@dataclass(frozen=True, slots=True)
class Table:
    """A table as its document prints it. To have it is not to have looked into it: whatever shows its content notes its name."""

    name: str
    _content: Content
    _by_cell: dict[str, dict[str, list[Row]]] = field(default_factory=dict, compare=False, repr=False)
    _noted: tuple[str] = field(init=False, compare=False, repr=False)

    def __post_init__(self) -> None:
        object.__setattr__(self, "_noted", (f"table {self.name}",))

    @property
    def content(self) -> Content:
        note(self._noted)
        return self._content

    @property
    def rows(self) -> tuple[Row, ...]:
        return self.content.rows

    @property
    def columns(self) -> tuple[str, ...]:
        return self.content.columns

    @property
    def title(self) -> str:
        return self.content.title

    @property
    def document(self) -> str:
        return self.content.document

    @property
    def edition(self) -> str:
        return self.content.edition

    @property
    def clause(self) -> str:
        return self.content.clause

    @property
    def basis(self) -> Basis:
        return self.content.basis

    @property
    def citation(self) -> Citation:
        """On whose word the table stands; where rows differ, the weakest word of them."""
        return Citation(self.basis, self.document, self.clause, (f"table {self.name}",))

    def row_citation(self, row: Row) -> Citation:
        """On whose word one row stands: its own document, clause and basis, the table's for what it does not hold."""
        basis = _basis(self.name, row["basis"]) if "basis" in row else self.basis
        if "document" not in row:
            return Citation(basis, self.document, row.get("clause", self.clause), (f"table {self.name}",))
        # an empty cell says that no document stands behind the row, so the table's must not step in
        return Citation(basis, row["document"], row.get("clause", ""), (f"table {self.name}",))

    def row(self, column: str, text: str) -> Row:
        """The one row whose cell in `column` is `text`. Raises KeyError where there is none, or more than one."""
        note(self._noted)
        rows = self._by_cell.get(column) or self._rows_by(column)
        found = rows.get(text, ())
        if len(found) != 1:
            known = ", ".join(row[column] for row in self.rows)
            raise KeyError(f"table {self.name} has {len(found)} rows with {column} = {text}; it has: {known}")
        return found[0]

    def _rows_by(self, column: str) -> dict[str, list[Row]]:
        """Rows by their cell in a column, gathered when first asked for: rules look rows up thousands of times."""
        found: dict[str, list[Row]] = {}
        for row in self._content.rows:
            found.setdefault(row[column], []).append(row)
        self._by_cell[column] = found
        return found


@cache
def table(name: str) -> Table:
    """The table in `tables/NAME.yaml`.

    Raises KeyError for a name not known, ValueError for a file that is not a table.
    """
    file = resources.files(__package__).joinpath(_FOLDER, f"{name}.yaml")
    if not file.is_file():
        raise KeyError(f"there is no table {name}")
    entries = read_shipped(file.read_bytes())
    if not isinstance(entries, dict) or set(entries) != {*_HEADS, "columns", "rows"}:
        raise ValueError(f"table {name} must hold {', '.join(_HEADS)}, columns and rows, and nothing else")
    columns = tuple(_text(name, cell) for cell in _items(name, entries["columns"]))
    rows = tuple(_row(name, columns, row) for row in _items(name, entries["rows"]))
    title, document, edition, clause, basis = (_text(name, entries[head]) for head in _HEADS)
    for row in rows:
        if "basis" in row:
            _basis(name, row["basis"])
    return Table(name, Content(title, document, edition, clause, _basis(name, basis), columns, rows))


def cell_citation(name: str, key: str, column: str) -> Citation:
    """On whose word one cell stands: the row of `NAME_read` that names it, else its whole row.

    A row weighs as its weakest cell; what was read in a document beside weaker cells is listed in `NAME_read`.
    `key` is the row's first cell. Raises KeyError for a row or a column that is not there.
    """
    found = table(name)
    row = found.row(found.columns[0], key)
    if column not in row:
        raise KeyError(f"table {name} has no column {column}; it has: {', '.join(found.columns)}")
    read = f"{name}_read"
    if read in table_names():
        for cell in table(read).rows:
            if (cell["id"], cell["column"]) == (key, column):
                return table(read).row_citation(cell)
    return found.row_citation(row)


@cache
def table_names() -> tuple[str, ...]:
    """The name of every table, in alphabetical order."""
    folder = resources.files(__package__).joinpath(_FOLDER)
    return tuple(sorted(file.name.removesuffix(".yaml") for file in folder.iterdir() if file.name.endswith(".yaml")))


@cache
def _basis(name: str, text: str) -> Basis:
    """A table gives its basis by its word (`practice`) or by the wording that is printed (`common practice, no
    source`).
    """
    for basis in Basis:
        if text in {basis.value, basis.name.lower()}:
            return basis
    raise ValueError(
        f"table {name} has the basis {text!r}; it is one of: {', '.join(basis.name.lower() for basis in Basis)}"
    )


def _row(name: str, columns: tuple[str, ...], cells: object) -> Row:
    if isinstance(cells, dict):
        if set(cells) != set(columns):
            raise ValueError(f"table {name} has a row with other cells than its columns: {sorted(cells)}")
        return {column: _text(name, cells[column]) for column in columns}
    listed = [_text(name, cell) for cell in _items(name, cells)]
    if len(listed) != len(columns):
        raise ValueError(f"table {name} has a row of {len(listed)} cells under {len(columns)} columns: {listed}")
    return dict(zip(columns, listed, strict=True))


def _items(name: str, held: object) -> list[object]:
    if not isinstance(held, list):
        raise ValueError(f"table {name} must list its columns and rows")
    return held


def _text(name: str, held: object) -> str:
    if not isinstance(held, str):
        raise ValueError(f"table {name} has a list or a mapping where one text belongs")
    return held
