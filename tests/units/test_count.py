"""A number that may be left open between two: what is accepted, and how it is printed."""

from __future__ import annotations

import pytest

from specgen.units.count import parse_count, show_count


@pytest.mark.parametrize(("text", "printed"), [("2", "2"), ("2..3", "2 to 3"), ("min 2", "at least 2"), ("2..2", "2")])
def test_a_count_is_printed(text: str, printed: str) -> None:
    assert show_count(parse_count(text)) == printed
    assert parse_count(str(parse_count(text))) == parse_count(text)


@pytest.mark.parametrize(
    ("wide", "narrow", "holds"),
    [
        ("2..3", "2", True),
        ("2", "2..3", False),
        ("2..3", "3..4", False),
        ("min 2", "2..9", True),
        ("2..9", "min 2", False),
        ("min 3", "min 2", False),
    ],
)
def test_what_a_count_accepts(wide: str, narrow: str, holds: bool) -> None:
    assert parse_count(wide).holds_all_of(parse_count(narrow)) is holds
