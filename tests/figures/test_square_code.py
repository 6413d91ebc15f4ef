"""The square code: its drawing says what the matrix of the encoder says, with white around it. A reader of codes read it off a page."""

from __future__ import annotations

import re

import segno

from specgen.figures.square_code import square_code

TEXT = "MS-001 B 2026-11-25 " + "5ADE6A573ECD76E64FAB2D1D9E046DE67F5839C5DF88DF3F09BA358D88E1B1B0"


def test_every_dark_module_is_drawn_and_no_other() -> None:
    drawn = square_code(TEXT, "Code")
    side = int(re.search(r'viewBox="0 0 (\d+) \d+"', drawn)[1])
    dark = set()
    for x, y, length in re.findall(r"M(\d+) (\d+)h(\d+)v1h-\3z", drawn):
        dark |= {(int(x) + step, int(y)) for step in range(int(length))}
    code = segno.make(TEXT, error="m", micro=False, boost_error=False)
    expected = {(x + 4, y + 4) for y, row in enumerate(code.matrix) for x, bit in enumerate(row) if bit}
    assert dark == expected
    assert side == len(code.matrix) + 8
    assert not any(at < 4 or at >= side - 4 for module in dark for at in module)


def test_the_code_stays_coarse_enough_for_a_photocopy() -> None:
    """14 mm over its side leaves 0.3 mm a module (how small a reader takes is common practice, no source)."""
    side = int(re.search(r'viewBox="0 0 (\d+) ', square_code(TEXT, "Code"))[1])
    assert side <= 45


def test_the_drawing_is_safe_in_a_page() -> None:
    drawn = square_code('<&"', '<b>"&')
    assert drawn.startswith("<svg ")
    assert drawn.endswith("</svg>")
    assert "<b>" not in drawn
    assert "<title>&lt;b&gt;&quot;&amp;</title>" in drawn
