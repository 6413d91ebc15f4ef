"""Pages of printed documents: full enough, as many as they may be, and no heading left alone at the foot of one."""

from __future__ import annotations

import io
from itertools import groupby
from typing import Any

import pypdf
import pytest

from specgen.checking import Checked, check
from specgen.printing.documents import print_documents
from tests.good_spec import DEMO, DEMO_RANGE, ON

MM = 72 / 25.4
TOP, FOOT = 16 * MM, 13 * MM
"""The margins of the sheet (templates/style/print.css)."""

# kind, what is asked: pages with calculations, and the page that may be left with a gap. That is the page before the safety section
# of a method statement, which starts a page of its own.
BUDGET: dict[tuple[str, str], tuple[int, int | None]] = {
    ("method-statement", "tower-wagon-doors"): (10, None),
    ("method-statement", "rail-grinder-hood"): (16, 11),
    ("data-sheet", "primer-210"): (3, None),
    ("data-sheet", "surfacer-230"): (3, None),
    ("data-sheet", "topcoat-410"): (3, None),
    ("order-list", ""): (4, None),
    ("range-overview", ""): (1, None),
}

Text = tuple[float, float, str, str]
"""Height on the sheet, size, face, words."""


@pytest.fixture(scope="module")
def demo() -> dict[str, Checked]:
    """The tramway's folder, and the range whose sheets and overview are printed in its own."""
    tramway, products = check(DEMO, ON), check(DEMO_RANGE, ON)
    return {kind: products if kind in ("data-sheet", "range-overview") else tramway for kind, _ in BUDGET}


@pytest.mark.parametrize(("kind", "asked"), BUDGET)
def test_pages_are_full_and_no_heading_stands_alone(kind: str, asked: str, demo: dict[str, Checked]) -> None:
    most, gap = BUDGET[kind, asked]
    subject = {"jobs" if kind == "method-statement" else "products": [asked]} if asked else {}
    (data,) = print_documents(demo[kind], documents=[kind], formats=["pdf"], **subject).values()
    pages = pypdf.PdfReader(io.BytesIO(data)).pages
    assert len(pages) <= most
    shares, alone = [], []
    for number, page in enumerate(pages, 1):
        height = float(page.mediabox.height)
        body = [text for text in _texts(page) if FOOT < text[0] < height - TOP]
        low = min(body)[0]
        if number not in {gap, len(pages)}:
            shares.append((height - TOP - low) / (height - TOP - FOOT))
        last = next(list(line) for _, line in groupby(sorted(body), key=lambda text: round(text[0])))
        if all(size >= 8.9 and "Semi-Bold" in face for _, size, face, _ in last):
            alone.append((number, [words for *_, words in last]))
    assert alone == []
    # of one page the last is the only one
    assert not shares or sum(shares) / len(shares) >= 0.75
    assert min(shares, default=1) >= 0.5, shares


def _texts(page: Any) -> list[Text]:
    found: list[Text] = []

    def visit(text: str, now: list[float], matrix: list[float], font: dict[str, Any] | None, size: float) -> None:
        if text.strip():
            scale = matrix[3] * now[3]
            found.append((matrix[5] * now[3] + now[5], abs(size * scale), str((font or {}).get("/BaseFont")), text))

    page.extract_text(visitor_text=visit)
    return found
