"""Rows that are read line by line are what the library reads, and what is not simple is left to it."""

from __future__ import annotations

import pytest

from specgen.source.reader import read_shipped
from specgen.source.shipped_rows import parted

HEAD = "title: Some rows\ncolumns: [id, says]\n"


def _left_to_the_library(rows: str) -> list[str] | None:
    """The rows that are not simple; None where rows are not one a line."""
    left: list[str] = []
    return None if parted(f"{HEAD}rows:\n{rows}", left.append) is None else left


@pytest.mark.parametrize(
    ("row", "read"),
    [
        ("[a, b c]", ["a", "b c"]),
        ('["1", ""]', ["1", ""]),
        ("['a|b, c', d ]", ["a|b, c", "d"]),
        ('{id: a, says: "to: be, or {not}"}', {"id": "a", "says": "to: be, or {not}"}),
        (r"{id: a, says: '\b(?:x|y)\b'}", {"id": "a", "says": r"\b(?:x|y)\b"}),
    ],
)
def test_a_simple_row_is_read(row: str, read: object) -> None:
    assert _left_to_the_library(f"  - {row}\n") == []
    assert read_shipped(f"{HEAD}rows:\n  - {row}\n".encode())["rows"] == [read]


@pytest.mark.parametrize(
    ("row", "read"),
    [
        ("['it''s', b]", ["it's", "b"]),
        (r'["a \" b", c]', ['a " b', "c"]),
        ("[a: b, c]", [{"a": "b"}, "c"]),
        ("[[a, b], c]", [["a", "b"], "c"]),
        ("[-1, ~]", ["-1", "~"]),
        ("{id: a, says: {more: b}}", {"id": "a", "says": {"more": "b"}}),
        ("[a, b] # as in [c]", ["a", "b"]),
    ],
)
def test_any_other_row_is_left_to_the_library(row: str, read: object) -> None:
    assert _left_to_the_library(f"  - {row}\n") == [row]
    assert read_shipped(f"{HEAD}rows:\n  - {row}\n".encode())["rows"] == [read]


@pytest.mark.parametrize(
    "rows", ["  - [a,\n     b]\n", "  - id: a\n    says: b\n", "  - [a, b] # why\n", "  - plain\n"]
)
def test_rows_of_several_lines_are_left_to_the_library_as_a_whole(rows: str) -> None:
    assert _left_to_the_library(rows) is None
    assert len(read_shipped(f"{HEAD}rows:\n{rows}".encode())["rows"]) == 1


def test_remarks_between_rows_are_none() -> None:
    assert read_shipped(f"{HEAD}rows:\n  # a remark\n  - [a, b]\n\n  - [c, d]\n".encode())["rows"] == [
        ["a", "b"],
        ["c", "d"],
    ]
