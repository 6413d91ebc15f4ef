"""Pages of printed method statements: full enough, as many as they may be, and no heading left alone at the foot of one."""

from __future__ import annotations

import io
from itertools import groupby
from typing import Any

import pypdf
import pytest

from specgen.checking import check
from specgen.printing.documents import print_documents
from tests.good_spec import DEMO, ON

MM = 72 / 25.4
TOP, FOOT = 16 * MM, 13 * MM
"""The margins of the sheet (templates/style/print.css)."""

# job: pages with calculations, and the page before the safety section, which starts a page of its own, where that leaves a gap
BUDGET = {"tower-wagon-doors": (10, None), "rail-grinder-hood": (16, 11)}

Text = tuple[float, float, str, str]
"""Height on the sheet, size, face, words."""


@pytest.mark.parametrize("job", BUDGET)
def test_pages_are_full_and_no_heading_stands_alone(job: str) -> None:
    most, gap = BUDGET[job]
    (data,) = print_documents(check(DEMO, ON), documents=["method-statement"], formats=["pdf"], jobs=[job]).values()
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
    assert sum(shares) / len(shares) >= 0.75
    assert min(shares) >= 0.5, shares


def _texts(page: Any) -> list[Text]:
    found: list[Text] = []

    def visit(text: str, now: list[float], matrix: list[float], font: dict[str, Any] | None, size: float) -> None:
        if text.strip():
            scale = matrix[3] * now[3]
            found.append((matrix[5] * now[3] + now[5], abs(size * scale), str((font or {}).get("/BaseFont")), text))

    page.extract_text(visitor_text=visit)
    return found
