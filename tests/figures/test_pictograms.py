"""The pictograms: one for every code the tables name, in the form of the GHS, with a name a screen reader can say."""

from __future__ import annotations

import re
from xml.etree import ElementTree

import pytest

from specgen.figures.pictograms import CODES, INK, RED, pictogram
from specgen.standards.tables import table
from specgen.trade.codes import parts

SVG = "{http://www.w3.org/2000/svg}"


def test_every_code_of_the_tables_is_drawn() -> None:
    named = {code for row in table("label_elements").rows for code in parts(row["pictograms"])}
    named |= {c for row in table("pictogram_precedence").rows for k in ("present", "yields") for c in parts(row[k])}
    assert set(CODES) == named


@pytest.mark.parametrize("code", CODES)
def test_form(code: str) -> None:
    """GHS annex 1 and CLP annex V: a square on its point, red frame, white ground, black symbol."""
    drawn = pictogram(code, "Flame & <more>")
    root = ElementTree.fromstring(drawn)  # our own drawing
    title, frame, symbol = root
    assert (title.tag, title.text) == (f"{SVG}title", "Flame & <more>")
    assert (frame.get("d"), frame.get("fill"), frame.get("stroke")) == ("M50 6 L94 50 L50 94 L6 50 Z", "#ffffff", RED)
    assert symbol.get("fill") == INK
    # nothing in the symbol but black and white: the frame alone is red, and the page still says it in grey
    assert set(re.findall(r"#[0-9a-f]{6}", drawn.replace(RED, ""))) <= {INK, "#ffffff"}


def test_no_two_are_alike() -> None:
    assert len({pictogram(code, "") for code in CODES}) == len(CODES)


def test_an_unknown_code_is_not_made_up() -> None:
    with pytest.raises(KeyError):
        pictogram("GHS10", "")
