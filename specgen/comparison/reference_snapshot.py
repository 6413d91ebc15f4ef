"""A snapshot of the reference data: what the published tables hold, and the documents cited. Called by the callers of `compare`.

Two folders judged by one program have the same snapshot. A frozen revision brings the one it was judged by: of the tables it
looked into and no others. Records issued before that was noted bring all there were, each by the bytes of its file.
"""

from __future__ import annotations

import hashlib
import json
from collections.abc import Callable, Iterable, Iterator, Mapping, Set
from importlib import resources

from specgen.comparison.changes import Kind, TableMoved
from specgen.standards.citations import documents
from specgen.standards.reads import remembered
from specgen.standards.tables import table, table_names

Snapshot = Mapping[str, str]
"""SHA-256 of the content by `content of table NAME` and `document ID`; in old records, of a file's bytes by `table NAME`."""

_TABLE, _DOCUMENT, _CONTENT = "table ", "document ", "content of table "


def reference_snapshot(looked_into: Iterable[str] | None = None) -> dict[str, str]:
    """Of these, named as they are noted (`standards.reads`); of all where None. A comment in a table is no part of it."""
    if looked_into is None:
        looked_into = (*(f"{_TABLE}{name}" for name in table_names()), *(f"{_DOCUMENT}{key}" for key in documents()))
    return {key_of(name): _hashed(name) for name in sorted(looked_into)}


def key_of(name: str) -> str:
    """What a snapshot calls a table or document that is noted by this name."""
    return f"{_CONTENT}{name.removeprefix(_TABLE)}" if name.startswith(_TABLE) else name


def lists_all(snapshot: Snapshot) -> bool:
    """True for one of an old record, which lists every table there was, read or not."""
    return any(name.startswith(_TABLE) for name in snapshot)


def by_content(snapshot: Snapshot) -> Snapshot:
    """A snapshot of an old record named as those of today. A table whose file is the same byte for byte holds the same; of
    any other only that it is not the same can be told."""
    return {key_of(name): _today(name, held) for name, held in snapshot.items()}


def changed(old: Snapshot, new: Snapshot, looked_into: Callable[[], Set[str]]) -> list[str]:
    """What both list and hold differently; of an old record only what is looked into today, which is asked where it matters."""
    before, now = by_content(old), by_content(new)
    found = sorted(name for name in before.keys() & now.keys() if before[name] != now[name])
    if found and (lists_all(old) or lists_all(new)):
        wanted = {key_of(name) for name in looked_into()}
        return [name for name in found if name in wanted]
    return found


def side_by_side(old: Snapshot, new: Snapshot, looked_into: Callable[[], Set[str]]) -> tuple[Snapshot, Snapshot]:
    """Two snapshots cut to what can be told of them: what both list, as far as it is looked into.

    That one of them lists a table more says that it looked into more, not that the table is new or gone.
    """
    before, now = by_content(old), by_content(new)
    moved = {name for name in before.keys() & now.keys() if before[name] != now[name]}
    told = (before.keys() & now.keys()) - (moved - set(changed(old, new, looked_into)))
    return {name: before[name] for name in told}, {name: now[name] for name in told}


def moved_tables(old: Snapshot, new: Snapshot) -> Iterator[TableMoved]:
    """Tables and documents that came, went or hold something else."""
    for name in sorted({*old, *new}):
        if name not in old:
            yield TableMoved(name, Kind.ADDED)
        elif name not in new:
            yield TableMoved(name, Kind.REMOVED)
        elif old[name] != new[name]:
            yield TableMoved(name, Kind.CHANGED)


def _today(name: str, held: str) -> str:
    table_name = name.removeprefix(_TABLE)
    if not name.startswith(_TABLE) or table_name not in table_names():
        return held
    return _hashed(name) if hashlib.sha256(_file(table_name)).hexdigest() == held else held


def _file(name: str) -> bytes:
    return resources.files("specgen.standards").joinpath("tables", f"{name}.yaml").read_bytes()


@remembered
def _hashed(name: str) -> str:
    if name.startswith(_DOCUMENT):
        entry = documents()[name.removeprefix(_DOCUMENT)]
        return hashlib.sha256(f"{entry.title}\n{entry.read}".encode()).hexdigest()
    held = table(name.removeprefix(_TABLE)).content
    heads = [held.title, held.document, held.edition, held.clause, held.basis.value]
    rows = [[row[column] for column in held.columns] for row in held.rows]
    text = json.dumps([heads, held.columns, rows], ensure_ascii=False)
    return hashlib.sha256(text.encode("utf-8")).hexdigest()
