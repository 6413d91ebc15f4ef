"""How the records of the documents are built: frozen, and by keyword, for two texts that change places pass every type check."""

from __future__ import annotations

import dataclasses
import importlib
import inspect
import pkgutil
from collections.abc import Iterator

from specgen import documents

MOST_BY_PLACE = 2


def _records() -> Iterator[type]:
    for module in pkgutil.walk_packages(documents.__path__, "specgen.documents."):
        for _, found in inspect.getmembers(importlib.import_module(module.name), inspect.isclass):
            if found.__module__ == module.name and dataclasses.is_dataclass(found):
                yield found


def test_records_are_frozen_and_built_by_keyword() -> None:
    records = list(_records())
    assert len(records) > 40
    by_place = {record: [field.name for field in dataclasses.fields(record) if not field.kw_only] for record in records}
    assert {record.__qualname__: names for record, names in by_place.items() if len(names) > MOST_BY_PLACE} == {}
    assert [record.__qualname__ for record in records if not record.__dataclass_params__.frozen] == []  # type: ignore[attr-defined]
