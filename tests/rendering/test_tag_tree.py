"""The structure a PDF gives of itself, read back as an outline of its elements."""

from __future__ import annotations

import io
import re
from typing import Any

import pytest
from pypdf import PdfReader

from specgen.rendering.failure import RenderError
from specgen.rendering.pdf import write_pdf

PAGE = '<html lang="en"><head><title>T</title></head><body>{}</body></html>'


def tags(body: str) -> str:
    """The tag tree of a page as text: each element with what it holds in brackets, running text as a dot."""
    root = PdfReader(io.BytesIO(write_pdf(PAGE.format(body), page_size="A4"))).trailer["/Root"]["/StructTreeRoot"]
    (document,) = root["/K"]
    return _outline(document.get_object(), root.indirect_reference)


def _outline(element: Any, parent: Any) -> str:
    assert element.raw_get("/P") == parent  # each element names the one it stands in, or readers lose their way
    inside = []
    for kid in element["/K"]:
        if isinstance(kid, int):
            inside.append(".")
        else:
            inside.append(_outline(kid.get_object(), element.indirect_reference))
    scope = element.get("/A", {}).get("/Scope", "")
    # a span around running text says nothing
    return re.sub(r"Span\(\.\)", ".", f"{element['/S'][1:]}{scope}({' '.join(inside)})")


TABLE = """<table><thead><tr><th>Part</th><th colspan=2>Film</th></tr></thead>
<tbody><tr><th colspan=3>Outside</th></tr><tr><th>Rail</th><td>40</td><td>60</td></tr></tbody></table>"""

TREES = {
    "heading cells": (
        TABLE,
        "Table(THead(TR(TH/Column(.) TH/Column(.))) TBody(TR(TH/Column(.)) TR(TH/Row(.) TD(.) TD(.))))",
    ),
    "table without a head": ("<table><tr><th>a</th><td>b</td></tr></table>", "Table(TBody(TR(TH/Row(.) TD(.))))"),
    "entry of running text": ("<ol><li>one</li></ol>", "L(LI(Lbl(.) LBody(.)))"),
    "entry of paragraphs": (
        "<ol><li><p>one</p><p>two</p></li></ol>",
        "L(LI(Lbl(.) LBody(P(.) P(.))))",
    ),
    "entry of both": ("<ol><li>one<p>two</p></li></ol>", "L(LI(Lbl(.) LBody(Div(.) P(.))))"),
    "entries side by side": (
        '<ul style="list-style: none"><li style="display: inline-block">a</li> <li style="display: inline-block">b</li></ul>',
        "L(LI(LBody(. .)) LI(LBody(.)))",
    ),
    "names and values": (
        "<dl><div><dt>Site</dt><dd>North bank</dd></div></dl>",
        "L(LI(Lbl(.) LBody(Div(.))))",
    ),
}


@pytest.mark.parametrize("case", TREES)
def test_tree(case: str) -> None:
    body, expected = TREES[case]
    assert tags(body) == f"Document({expected})"


REFUSED = {
    "level skipped": ("<h1>a</h1><h3>b</h3>", "A heading of level 3 follows one of level 1. Make it one of level 2"),
    "level skipped later": ("<h1>a</h1><h2>b</h2><h3>c</h3><h2>d</h2><h4>e</h4>", "of level 4 follows one of level 2"),
    "no first level": ("<h2>a</h2>", "A heading of level 2 is the first. Make it one of level 1"),
    "drawing": ('<svg xmlns="http://www.w3.org/2000/svg" width="9" height="9"/>', "A drawing has no title"),
    "drawing with an empty title": ('<svg xmlns="http://www.w3.org/2000/svg" width="9" height="9"><title/></svg>', "no title"),
    "drawing with a label only": (
        '<svg xmlns="http://www.w3.org/2000/svg" aria-label="a" width="9" height="9"></svg>', "no title"
    ),
}  # fmt: skip


@pytest.mark.parametrize("case", REFUSED)
def test_what_cannot_be_read_aloud_is_refused(case: str) -> None:
    body, message = REFUSED[case]
    with pytest.raises(RenderError) as refusal:
        write_pdf(PAGE.format(body), page_size="A4")
    assert message in str(refusal.value)


def test_levels_may_end_several_at_once() -> None:
    assert tags("<h1>a</h1><h2>b</h2><h3>c</h3><h1>d</h1>") == "Document(H1(.) H2(.) H3(.) H1(.))"
