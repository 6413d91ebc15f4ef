"""The bar at the foot of a phone dials the number that is printed, and none where the text is not sure."""

from __future__ import annotations

import re

import pytest

from specgen.documents.emergency_call import dialled


@pytest.mark.parametrize(
    ("text", "number"),
    [
        ("+00 555 0199 (24 h)", "+005550199"),
        ("+00 555 0199, day and night", "+005550199"),
        ("+00 555 0199 24 h", "+005550199"),
        ("+00 555 0199 24/7", "+005550199"),
        ("24 hours: 0800 555 0199", "08005550199"),
        ("24-hour line (0711) 555-0199", "07115550199"),
        ("+00 (0)20 555 0199", "+00205550199"),
        ("+00(0)20.555.0199", "+00205550199"),
        ("112", "112"),
        ("112 or +00 555 0199", "112"),
        ("+00 555 0199 / +00 555 0200", "+005550199"),
        ("040/555-0199 from 8:00 to 17:00", "0405550199"),
        ("01 23 45 67 89", "0123456789"),
        ("ask for Ms 7, +00\N{NO-BREAK SPACE}555\N{NO-BREAK SPACE}0199", "+005550199"),
    ],
)
def test_what_is_printed_is_dialled(text: str, number: str) -> None:
    assert dialled(text) == number
    assert re.fullmatch(r"\+?[0-9]+", number)


@pytest.mark.parametrize(
    "text", ["the gatehouse", "call 24 h", "12", "see the card at door 4", "+00 555 0199 0200 0300 0400 0500"]
)
def test_nothing_is_dialled_that_is_no_number(text: str) -> None:
    assert dialled(text) == ""
