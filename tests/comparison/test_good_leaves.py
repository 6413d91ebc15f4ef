"""Every leaf the good specification states, changed in its source one by one: told once, and the places are those of the two texts."""

from __future__ import annotations

from typing import Any

import pytest

from specgen.comparison.compare import Side, compare
from specgen.model.canonical import written
from specgen.model.outline import value_type
from specgen.model.spec import KINDS, LIST_KINDS
from specgen.model.walk import Path, inner_record, leaves
from tests.comparison.full_spec import samples
from tests.comparison.sides import changed
from tests.good_spec import loaded

OLD = loaded(changed())
# how the folder is read, no value that could differ
FORMAT = ("project", "schema_version")
# another product, system or preparation has to exist, and one with the variant; `cases.yaml` has these
REFERENCES = {"product", "variant", "system", "preparation"}


def _paths() -> list[tuple[Path, Any]]:
    assert OLD.spec is not None
    found = [(path, value) for path, value, _ in leaves(OLD.spec.project, ("project",))]
    for kind in LIST_KINDS:
        for key, record in getattr(OLD.spec, kind).items():
            found += [(path, value) for path, value, _ in leaves(record, (kind, key))]
    return [
        (path, value) for path, value in found if path != FORMAT and path[-1] != "id" and path[-1] not in REFERENCES
    ]


PATHS = _paths()


def _other(path: Path, value: Any) -> str:
    model = KINDS[path[0]]
    for step in path[1 if path[0] == "project" else 2 : -1]:
        model = (inner_record(model, step) if step in model.model_fields else None) or model
    kind = value_type(model.model_fields[path[-1]])
    assert kind is not None
    held = written(value)
    taken = held if isinstance(held, list) else [held]
    other = next(text for text in samples(kind) if text not in taken)
    return f"[{other}]" if isinstance(held, list) else f"'{other}'"


@pytest.mark.parametrize(("path", "value"), PATHS, ids=[".".join(path) for path, _ in PATHS])
def test_leaf(path: Path, value: Any) -> None:
    address = ".".join(path)
    new = loaded(changed({address: _other(path, value)}))
    assert not new.findings
    assert OLD.spec is not None
    assert new.spec is not None
    found = compare(Side(OLD.spec, OLD.place), Side(new.spec, new.place))
    (change,) = found.changes
    assert change.path == address
    for place, side in ((change.old_place, OLD), (change.new_place, new)):
        assert place is not None
        assert place == side.place(path)
        assert side.missing(path) is None
        stretch = place.text[place.column - 1 : place.end_column - 1]
        stated = change.difference.old if side is OLD else change.difference.new
        if not isinstance(written(stated), list):
            assert _plain(stretch) == _plain(str(written(stated)))


def _plain(text: str) -> str:
    return " ".join(text.strip("'\"").split())


def test_most_of_the_model_is_met() -> None:
    assert len(PATHS) > 200
