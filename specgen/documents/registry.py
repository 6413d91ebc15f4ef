"""Every kind of document there is, found in the folders that declare one. Called by `specgen.printing` and by the tests."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from importlib import import_module
from pkgutil import iter_modules
from typing import Any

from specgen import documents
from specgen.documents.kind import Kind


def _declared() -> Iterator[Kind[Any, Any]]:
    for folder in iter_modules(documents.__path__, "specgen.documents."):
        if folder.ispkg and isinstance(kind := getattr(import_module(folder.name), "KIND", None), Kind):
            yield kind


KINDS: Mapping[str, Kind[Any, Any]] = {kind.name: kind for kind in sorted(_declared(), key=lambda kind: kind.place)}
"""By name, in the order of every list."""
