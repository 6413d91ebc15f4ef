"""The list of signs that can be printed is that of the shipped fonts."""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path

from fontTools.ttLib import TTFont

import specgen.model
from specgen.model.printable import outside_fonts
from specgen.rendering.assets import asset
from tests.rendering.shipped_faces import FACES

_HEAD = "# Code points that every upright font of templates/fonts has; written by tests/model/test_printable.py\n"


def test_list_is_that_of_the_fonts(golden: Callable[[Path, str], None]) -> None:
    held = [set(TTFont(asset(file)).getBestCmap()) for file, _, style in FACES if style == "normal"]
    text = _HEAD
    codes = sorted(set.intersection(*held))
    first = codes[0]
    for code, following in zip(codes, [*codes[1:], None], strict=True):
        if following != code + 1:
            text += f"{first:04X}\n" if first == code else f"{first:04X}-{code:04X}\n"
            first = following or 0
    assert len(held) == 2
    golden(Path(specgen.model.__path__[0]) / "printable.txt", text)


def test_signs_outside() -> None:
    assert outside_fonts("Δ 3 K,\n40 µm\u202f± \ufffd") == []
    assert outside_fonts("a漆b😀漆\tع") == ["漆", "😀", "\t", "ع"]
