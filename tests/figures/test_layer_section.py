"""The section through the coats: every label inside the drawing, none on another, however many coats there are."""

from __future__ import annotations

import re
from fractions import Fraction

import pytest

from specgen.figures.layer_section import Band, layer_section


def _drawn(heights: list[int]) -> tuple[float, list[float]]:
    """The height of the drawing, and where its labels stand, those of the coats from the substrate up and that of the substrate last."""
    bands = [Band(f"{number} coat", f"{height} µm", Fraction(height)) for number, height in enumerate(heights, 1)]
    svg = layer_section(bands, "steel", "Section")
    box = re.search(r'viewBox="0 0 \d+ (\d+)"', svg)
    assert box is not None
    return float(box[1]), [float(at) for at in re.findall(r'<text x="\d+" y="([-\d.]+)"', svg)]


@pytest.mark.parametrize("heights", [[60], [56, 72, 60], [10] * 12, [300, *[8] * 11], [*[8] * 11, 300], [40] * 40])
def test_every_label_stands_in_the_drawing_and_on_no_other(heights: list[int]) -> None:
    height, labels = _drawn(heights)
    assert len(labels) == len(heights) + 1
    assert all(16 <= at <= height - 4 for at in labels)  # the type is 16 high
    *coats, substrate = labels
    assert all(below - above >= 20 for below, above in zip((substrate, *coats), coats, strict=False))


def test_without_a_film_nothing_is_drawn() -> None:
    assert layer_section([], "steel", "Section") == ""
