"""What stands outside the sources and yet decides: published tables and the documents cited. Called by the callers of `compare`.

Two folders judged by one program have the same shelf; a frozen revision brings the shelf it was judged by.
"""

from __future__ import annotations

import hashlib
from collections.abc import Iterator, Mapping
from functools import cache
from importlib import resources

from specgen.comparison.changes import Kind, TableMoved
from specgen.standards.citations import documents
from specgen.standards.tables import table_names


@cache
def shelf() -> Mapping[str, str]:
    """The SHA-256 of each published table as `table NAME`, and of each cited document's title, edition included, as `document ID`."""
    folder = resources.files("specgen.standards").joinpath("tables")
    held = {f"table {name}": folder.joinpath(f"{name}.yaml").read_bytes() for name in table_names()}
    held |= {f"document {key}": f"{entry.title}\n{entry.read}".encode() for key, entry in documents().items()}
    return {name: hashlib.sha256(content).hexdigest() for name, content in held.items()}


def moved_tables(old: Mapping[str, str], new: Mapping[str, str]) -> Iterator[TableMoved]:
    """Tables and documents that came, went or hold something else."""
    for name in sorted({*old, *new}):
        if name not in old:
            yield TableMoved(name, Kind.ADDED)
        elif name not in new:
            yield TableMoved(name, Kind.REMOVED)
        elif old[name] != new[name]:
            yield TableMoved(name, Kind.CHANGED)
