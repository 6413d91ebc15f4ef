"""A table of few short columns stays a table on a phone; a wide one becomes cards, whose short cells stand side by side."""

from __future__ import annotations

import re
from collections.abc import Callable

import pytest

from specgen.rendering.phone import cell_class, stays_a_table


@pytest.mark.parametrize(
    ("headings", "rows"),
    [
        (
            ("Limit", "Value"),
            [("Air temperature", "10 to 30 °C"), ("Stop", "a sentence that runs over a line or three of the page")],
        ),
        (("Coat", "Min.", "Nominal", "Max."), [("1 primer", "40 µm", "56 µm", "80 µm")]),
        (("Stage", "At 20 °C", "At 30 °C"), [("Dry to handle", "20 h", "9 h")]),
        (("Role", "Name", "Signature", "Date"), [("Approved", "C. Signer", "", "")]),
    ],
)
def test_few_short_columns_stay_a_table(headings: tuple[str, ...], rows: list[tuple[str, ...]]) -> None:
    assert stays_a_table(headings, rows)


@pytest.mark.parametrize(
    ("headings", "rows"),
    [
        (("A", "B", "C", "D", "E"), [("1", "2", "3", "4", "5")]),
        (("Coat", "Product", "Interval"), [("1", "a product whose name is a long one", "4 h")]),
        (
            ("Coat", "Product", "Interval", "Remedy"),
            [("1 primer", "Epoxy primer, grey", "90 min to 16 h", "Abrade, P400")],
        ),
        (("Figure", "Fingerprint"), [("a", "0123456789abcdef0123456789abcdef0123456789abcdef")]),
        (("Alone",), [("a",)]),
        (("Nothing", "here"), []),
    ],
)
def test_many_or_long_columns_become_cards(headings: tuple[str, ...], rows: list[tuple[str, ...]]) -> None:
    assert not stays_a_table(headings, rows)


@pytest.mark.parametrize(
    ("cell", "room"),
    [
        ("", "left-out"),
        ("–", "left-out"),
        ("not stated", "short"),
        ("x xx " * 4 + "xxxx", "short"),
        ("x xx " * 5, ""),
        ("x" * 11, "short"),
        ("isobutyraldehyde", ""),
        ("Tue 2026-12-01 07:00", ""),
        ("2026-12-01", "short"),
        ("90 min\n16 h after it at 20 °C", "short"),
    ],
)
def test_a_cell_takes_the_room_it_needs(cell: str, room: str) -> None:
    assert cell_class(cell) == room


def test_the_sample_has_a_table_of_each_kind(sample: Callable[..., str]) -> None:
    page = sample("screen")
    assert re.findall(r'<table class="([^"]*)"', page[page.index("<main>") :]) == ["stacks", "", "slim sign-off"]
    reached_by_key = re.findall(r'tabindex="0" role="region" aria-label="([^"]*)"', page)
    heard = [" ".join(label.split()) for label in reached_by_key]
    assert heard == [
        "Table 2. Dry film, µm, 4 Readings",
        "Approval, 4 Readings",
    ]  # only what becomes cards cannot scroll
