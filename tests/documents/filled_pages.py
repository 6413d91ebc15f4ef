"""How full the pages of a printed document are, and which of its headings stand alone at the foot of one.

Asked by a test of the suite for a share of the demo, and by a campaign for all of it.
"""

from __future__ import annotations

import io
from dataclasses import dataclass
from itertools import groupby
from typing import Any

import pypdf

MM = 72 / 25.4
TOP, FOOT = 16 * MM, 13 * MM
"""The margins of the sheet (templates/style/print.css)."""

MEAN, LEAST = 0.75, 0.5
"""How full the pages before the last have to be together, and each of them."""

Text = tuple[float, float, str, str]
"""Height on the sheet, size, face, words."""


@dataclass(frozen=True)
class Pages:
    """Of each page the share of its height that is used, and the headings alone at a foot, by page."""

    shares: tuple[float, ...]
    alone: tuple[tuple[int, str], ...]

    def wrong(self) -> list[str]:
        """What is wrong with them; the last may be left with a gap."""
        judged = dict(enumerate(self.shares[:-1], 1))
        said = [f"page {at}: {words!r} stands alone" for at, words in self.alone]
        said += [f"page {at} is used to {share:.0%}" for at, share in judged.items() if share < LEAST]
        # of one page the last is the only one
        if judged and sum(judged.values()) / len(judged) < MEAN:
            said.append(f"the pages are used to {sum(judged.values()) / len(judged):.0%} together")
        return said


def pages_of(data: bytes) -> Pages:
    """Reads a document as it was printed."""
    shares, alone = [], []
    for number, page in enumerate(pypdf.PdfReader(io.BytesIO(data)).pages, 1):
        height = float(page.mediabox.height)
        body = sorted(text for text in _texts(page) if FOOT < text[0] < height - TOP)
        shares.append((height - TOP - body[0][0]) / (height - TOP - FOOT))
        lines = [list(line) for _, line in groupby(body, key=lambda text: round(text[0]))]
        if all(size >= 8.9 and "Semi-Bold" in face for _, size, face, _ in lines[0]):
            alone.append((number, " ".join(words for *_, words in lines[0])))
    return Pages(tuple(shares), tuple(alone))


def _texts(page: Any) -> list[Text]:
    found: list[Text] = []

    def visit(text: str, now: list[float], matrix: list[float], font: dict[str, Any] | None, size: float) -> None:
        if text.strip():
            scale = matrix[3] * now[3]
            found.append((matrix[5] * now[3] + now[5], abs(size * scale), str((font or {}).get("/BaseFont")), text))

    page.extract_text(visitor_text=visit)
    return found
