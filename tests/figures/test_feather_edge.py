"""The drawing of a repair: what is drawn for how many coats, where it ends, and that no text of a source is markup in it."""

from __future__ import annotations

import re
import xml.etree.ElementTree as ET
from collections.abc import Iterator
from itertools import pairwise

import pytest

from specgen.figures.feather_edge import MOST_OLD_COATS, feather_edge

SVG = "{http://www.w3.org/2000/svg}"
KEY = ("A: bare", "B: at least 20 mm", "C: sanded", "D: left")
OLD = ("alkyd, 80 µm", "unknown old paint")
NEW = ("1 primer", "2 top coat")


def _drawn(old: tuple[str, ...] = OLD, new: tuple[str, ...] = NEW) -> ET.Element:
    return ET.fromstring(feather_edge(old, new, "steel", KEY, "Edge"))


def _outlines(drawing: ET.Element) -> list[list[tuple[float, float]]]:
    return [
        [(float(x), float(y)) for x, y in (point.split(",") for point in shape.attrib["points"].split())]
        for shape in drawing.iter(f"{SVG}polygon")
    ]


def _points(drawing: ET.Element) -> Iterator[tuple[float, float]]:
    for outline in _outlines(drawing):
        yield from outline
    for text in drawing.iter(f"{SVG}text"):
        yield float(text.attrib["x"]), float(text.attrib["y"])


def test_texts() -> None:
    assert ["".join(text.itertext()) for text in _drawn().iter(f"{SVG}text")] == [
        "alkyd, 80 µm",
        "unknown old paint",
        "1 primer – 2 top coat",
        "steel",
        "A",
        "B",
        "C",
        "D",
        *KEY,
    ]


def test_each_old_coat_begins_where_the_slope_of_the_one_below_ends() -> None:
    lower, upper = _outlines(_drawn())[:2]
    assert lower[1] == upper[0]
    assert lower[0][0] < lower[1][0] < upper[1][0]


def test_each_new_coat_ends_beyond_the_one_below_and_on_sanded_paint() -> None:
    outlines = _outlines(_drawn())
    summit = outlines[1][1]
    # the last coat is drawn first
    last, first = outlines[2:4]
    ends = [max(x for x, _ in outline) for outline in (first, last)]
    assert summit[0] < ends[0] < ends[1] < 390
    for outline in (first, last):
        # it lands on the surface of the old paint
        assert max(outline) in {(end, summit[1]) for end in ends}


@pytest.mark.parametrize("old", [1, 2, 5, MOST_OLD_COATS])
@pytest.mark.parametrize("new", [1, 4, 12])
def test_everything_lies_inside(old: int, new: int) -> None:
    drawing = _drawn(tuple(f"old {n}" for n in range(old)), tuple(f"{n} coat" for n in range(new)))
    _, _, width, height = (float(figure) for figure in drawing.attrib["viewBox"].split())
    assert all(0 <= x <= width and 0 <= y <= height for x, y in _points(drawing))
    labels = sorted(float(text.attrib["y"]) for text in drawing.iter(f"{SVG}text") if text.attrib["x"] == "420")
    assert len(labels) == old + 1
    assert min(b - a for a, b in pairwise(labels)) >= 13


def test_no_text_is_markup() -> None:
    drawing = _drawn(("<script>x</script> & y",), ("<b>1</b>",))
    assert "<script>x</script> & y" in ["".join(text.itertext()) for text in drawing.iter(f"{SVG}text")]
    assert list(drawing.iter(f"{SVG}script")) == []


def test_nothing_is_carried_by_colour() -> None:
    colours = set(re.findall(r"#[0-9a-f]{6}", feather_edge(OLD, NEW, "steel", KEY, "Edge")))
    # greys of the house, whose channels lie a few steps apart
    assert all(max(rgb) - min(rgb) <= 10 for rgb in ([int(c[i : i + 2], 16) for i in (1, 3, 5)] for c in colours))


@pytest.mark.parametrize(("old", "new"), [((), NEW), (OLD, ()), (("x",) * (MOST_OLD_COATS + 1), NEW)])
def test_no_drawing(old: tuple[str, ...], new: tuple[str, ...]) -> None:
    assert feather_edge(old, new, "steel", KEY, "Edge") == ""
