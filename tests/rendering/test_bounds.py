"""Pages that would take minutes to lay out, or hold active content, are refused before they are set."""

from __future__ import annotations

import re

import pytest

from specgen.rendering.bounds import check_bounds
from specgen.rendering.failure import RenderError

LONG = "x" * 201

REFUSED = {
    "size": ("é" * 2_500_001, "5,000,002 bytes of HTML, more than the 5,000,000"),
    "word": (f"<p>a {LONG} b</p>", f"The word beginning “{'x' * 40}” has more than 200 characters"),
    "word over inline tags": (f"<p>{'x' * 150}<b>{'y' * 51}</b></p>", f"The word beginning “{'x' * 40}”"),
    "word of no-break blanks": ("<p>" + "ab\u00a0" * 67 + "</p>", "The word beginning “ab\u00a0ab"),
    "word of references": ("<p>" + "&#120;" * 201 + "</p>", f"The word beginning “{'x' * 40}”"),
    "word without end": (LONG, f"The word beginning “{'x' * 40}”"),
    "column span": ("<td colspan=65534>", "<td> element has colspan='65534'; a table cell spans 1 to 100"),
    "row span": ("<td rowspan=0>", "rowspan='0'"),
    "columns": ("<col span=1e9>", "span='1e9'"),
    "elements": ("<br>" * 60_001, "more than 60,000 elements"),
    "nesting": ("<div>" * 61, "nested more than 60 deep at <div>"),
    **{
        tag: (f"<{tag}>", f"holds a <{tag}> element. Printed documents hold no active content")
        for tag in ("script", "iframe", "object", "embed", "form", "base")
    },
    "handler": ('<p onclick="x">', "<p> element carries onclick"),
}


@pytest.mark.parametrize("case", REFUSED)
def test_a_page_out_of_bounds_is_refused(case: str) -> None:
    html, message = REFUSED[case]
    with pytest.raises(RenderError, match=re.escape(message)):
        check_bounds(html)


ALLOWED = {
    "size": "<p>" + "é " * 1_600_000,
    "word": f"<p>{LONG[1:]}</p>",
    "words over block tags": f"<p>{LONG[1:]}</p><p>{LONG[1:]}</p>",
    "words over a line break": f"<p>{LONG[1:]}<br>{LONG[1:]}</p>",
    "words over blanks": f"{LONG[1:]}\n{LONG[1:]} <b>{LONG[1:]}</b>",
    "span": "<td colspan=100 rowspan=1>",
    "nesting": "<div>" * 60,
    "elements": "<br>" * 60_000,
    "items without their ends": "<ul>" + "<ul><li>a</ul>" * 100 + "</ul>",
    "style": f"<style>{LONG}</style><p>a</p>",
}


@pytest.mark.parametrize("case", ALLOWED)
def test_a_page_within_bounds_passes(case: str) -> None:
    assert check_bounds(ALLOWED[case]) is None
