"""Snapshots of different reach and age side by side: what differs is told where both looked, and of an old one only what is read."""

from __future__ import annotations

import dataclasses
import hashlib
import inspect
from importlib import resources

import pytest

from specgen.comparison import reference_snapshot as module
from specgen.comparison.reference_snapshot import by_content, changed, lists_all, reference_snapshot, side_by_side
from specgen.standards.tables import Table, table


def _bytes_of(name: str) -> str:
    file = resources.files("specgen.standards").joinpath("tables", f"{name}.yaml")
    return hashlib.sha256(file.read_bytes()).hexdigest()


def _not_asked() -> frozenset[str]:
    raise AssertionError("a snapshot that lists what was read says it itself")


NOW = reference_snapshot(["table overcoat_matrix", "table comb_unfit_binders", "document CLP"])
OLD = {
    "table overcoat_matrix": _bytes_of("overcoat_matrix"),
    "table comb_unfit_binders": "0" * 64,
    "table climate_limits": "1" * 64,
    "table given_up": "2" * 64,
    "document CLP": NOW["document CLP"],
}


def test_of_some_and_of_all() -> None:
    assert set(NOW) == {"content of table overcoat_matrix", "content of table comb_unfit_binders", "document CLP"}
    assert NOW.items() < reference_snapshot().items()
    assert not lists_all(reference_snapshot())
    assert lists_all(OLD)


def test_an_old_one_is_read_by_content_where_the_file_is_the_same() -> None:
    read = by_content(OLD)
    assert read["content of table overcoat_matrix"] == NOW["content of table overcoat_matrix"]
    assert read["content of table comb_unfit_binders"] == "0" * 64
    assert by_content(NOW) == NOW


@pytest.mark.parametrize(
    ("looked_into", "told"),
    [
        ({"table comb_unfit_binders", "table overcoat_matrix"}, ["content of table comb_unfit_binders"]),
        ({"table overcoat_matrix", "table given_up"}, []),
    ],
)
def test_of_an_old_one_only_what_is_looked_into_is_told(looked_into: set[str], told: list[str]) -> None:
    for pair in ((OLD, NOW), (NOW, OLD)):
        assert changed(*pair, lambda: looked_into) == told
        first, second = side_by_side(*pair, lambda: looked_into)
        assert first.keys() == second.keys()
        assert sorted(name for name in first if first[name] != second[name]) == told


def test_two_old_ones_differ_where_their_files_did() -> None:
    later = OLD | {"table comb_unfit_binders": "3" * 64, "table climate_limits": "4" * 64}
    assert changed(OLD, later, lambda: {"table climate_limits"}) == ["content of table climate_limits"]
    assert changed(OLD, OLD, _not_asked) == []


def test_to_have_looked_into_more_is_no_change_of_a_table() -> None:
    more = NOW | reference_snapshot(["table climate_limits"])
    assert changed(NOW, more, _not_asked) == []
    assert side_by_side(NOW, more, _not_asked) == (NOW, NOW)
    other = more | {"document CLP": "5" * 64}
    assert changed(NOW, other, _not_asked) == ["document CLP"]


@pytest.mark.parametrize("row", [0, -1])
def test_a_cell_of_any_row_is_content(monkeypatch: pytest.MonkeyPatch, row: int) -> None:
    sound = table("comb_unfit_binders")
    for column in sound.columns:
        rows = [dict(held) for held in sound.rows]
        rows[row][column] += "x"
        other = Table(sound.name, dataclasses.replace(sound.content, rows=tuple(rows)))
        with monkeypatch.context() as patched:
            # the hash of a table is kept for the life of a process; here it has to be that of the other one
            patched.setattr(module, "_hashed", inspect.unwrap(module._hashed))
            patched.setattr(module, "table", lambda name, other=other: other)
            assert reference_snapshot(["table comb_unfit_binders"]).keys() <= NOW.keys()
            assert not reference_snapshot(["table comb_unfit_binders"]).items() <= NOW.items(), column
