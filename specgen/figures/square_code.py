"""A square code (QR code, ISO/IEC 18004) of a short text as SVG: what a telephone reads off an issued page.

Called by `specgen.documents.parts.issue_block`; the SVG text goes into the document as it is. The only module that knows the encoder.
"""

from __future__ import annotations

from html import escape
from itertools import groupby

import segno

_QUIET = 4
"""Modules left white around the code, as the standard asks."""


def square_code(text: str, title: str) -> str:
    """SVG of the code: one unit a module, error correction M, which mends about 15 % of it."""
    rows = [bytes(row) for row in segno.make(text, error="m", micro=False, boost_error=False).matrix]
    side = len(rows) + 2 * _QUIET
    strokes = "".join(_row(number, row) for number, row in enumerate(rows))
    return (
        f'<svg xmlns="http://www.w3.org/2000/svg" role="img" viewBox="0 0 {side} {side}" width="{side}" height="{side}" '
        f'class="square-code"><title>{escape(title)}</title><rect width="{side}" height="{side}" fill="#ffffff"/>'
        f'<path d="{strokes}" fill="#000000"/></svg>'
    )


def _row(number: int, row: bytes) -> str:
    """Runs of dark modules as boxes: strokes would leave hairlines between rows in some viewers."""
    out, at = [], _QUIET
    for dark, run in groupby(row):
        length = len(list(run))
        if dark:
            out.append(f"M{at} {number + _QUIET}h{length}v1h-{length}z")
        at += length
    return "".join(out)
