"""What stands outside the sources and yet decides: published tables and the documents cited. Called by the callers of `compare`.

Two folders judged by one program have the same shelf; a frozen revision brings the shelf it was judged by.
"""

from __future__ import annotations

import hashlib
from collections.abc import Iterator, Mapping
from functools import cache
from importlib import resources

from specgen.comparison.changes import Kind, TableMoved
from specgen.standards.tables import table_names

_PACKAGE = "specgen.standards"
_DOCUMENTS = "documents"


@cache
def shelf() -> Mapping[str, str]:
    """The SHA-256 of every published table by its name, and of the list of documents as `documents`."""
    folder = resources.files(_PACKAGE)
    files = {name: folder.joinpath("tables", f"{name}.yaml") for name in table_names()}
    files[_DOCUMENTS] = folder.joinpath(f"{_DOCUMENTS}.yaml")
    return {name: hashlib.sha256(file.read_bytes()).hexdigest() for name, file in files.items()}


def moved_tables(old: Mapping[str, str], new: Mapping[str, str]) -> Iterator[TableMoved]:
    """Tables that came, went or hold something else."""
    for name in sorted({*old, *new}):
        if name not in old:
            yield TableMoved(name, Kind.ADDED)
        elif name not in new:
            yield TableMoved(name, Kind.REMOVED)
        elif old[name] != new[name]:
            yield TableMoved(name, Kind.CHANGED)
