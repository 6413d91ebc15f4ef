"""The HTML edition stands alone."""

from __future__ import annotations

import base64
import re
from collections.abc import Callable
from html.parser import HTMLParser
from typing import Any

import pytest

from specgen.pictures.prepared import prepared
from specgen.rendering.failure import RenderError
from specgen.rendering.html import write_html


class References(HTMLParser):
    """Every reference and every id of a page."""

    def __init__(self, page: str) -> None:
        super().__init__()
        self.references: list[str | None] = []
        self.ids: list[str | None] = []
        self.feed(page)

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        for name, value in attrs:
            if name in ("src", "href", "srcset", "data", "action", "poster", "xlink:href"):
                self.references.append(value)
            if name == "id":
                self.ids.append(value)


def test_the_sample_refers_to_nothing_outside_itself(sample: Callable[..., str], sample_view: dict[str, Any]) -> None:
    page = write_html(sample("screen")).decode("utf-8")
    found = References(page)
    assert found.references == [f"#section-{number}" for number, _ in enumerate(sample_view["headings"], start=1)]
    assert [f"#{place}" for place in found.ids] == found.references
    assert re.findall(r"url\(|@import|<link|<script", page) == []
    assert page.startswith('<!DOCTYPE html>\n<html lang="en">')
    assert "<title>MS-0417 Touch-up of galvanised handrails</title>" in page


PAGE = '<html lang="en"><meta name="viewport" content="width=device-width"><title>T</title>{}</html>'

REFUSED = {
    "picture": ('<img src="https://example.org/a.png">', "<img> element refers to 'https://example.org/a.png'"),
    "data picture": ('<img src="data:image/png;base64,AA">', "<img> element refers to 'data:image/png;base64,AA'"),
    "picture set": ('<img srcset="a.png 2x">', "refers to 'a.png 2x' by its srcset"),
    "style sheet": ('<link rel="stylesheet" href="a.css">', "<link> element refers to 'a.css'"),
    "attachment": ('<link rel="attachment" href="file:///etc/passwd">', "refers to 'file:///etc/passwd'"),
    "link": ('<a href="https://example.org">a</a>', "<a> element refers to 'https://example.org'"),
    "script link": ('<a href=" javascript:x">a</a>', "<a> element refers to ' javascript:x'"),
    "ping": ('<a href="#a" ping="//example.org">a</a>', "by its ping"),
    "svg picture": ('<svg><image xlink:href="a.png"/></svg>', "<image> element refers to 'a.png'"),
    "svg fill": ('<svg><rect fill="url(//example.org#a)"/></svg>', "'url(//example.org#a)'"),
    "style url": ("<style>a { background: url(//example.org) }</style>", "'url(//example.org) }'"),
    "style import": ("<style>@import 'a.css';</style>", "\"@import 'a.css';\""),
    "style escape": (r"<style>a { background: u\72l(a) }</style>", r"'\\72l(a) }'"),
    "style attribute": ('<p style="background: url(a)">', "'url(a)'"),
    "refresh": ('<meta http-equiv="refresh" content="0;url=//example.org">', "http-equiv"),
}


@pytest.mark.parametrize("case", REFUSED)
def test_a_reference_to_the_outside_is_refused(case: str) -> None:
    markup, message = REFUSED[case]
    with pytest.raises(RenderError, match=re.escape(message)):
        write_html(PAGE.format(markup))


DOT = prepared(
    "dot.svg", b'<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 2 2"><rect width="1" height="1"/></svg>'
)


def test_a_picture_the_program_prepared_stands_in_the_page() -> None:
    page = write_html(PAGE.format(f'<img src="{DOT.address}" alt="dot">'), [DOT]).decode()
    kind, _, data = re.findall(r'src="(data:[^"]+)"', page)[0].partition(";base64,")
    assert kind == "data:image/svg+xml"
    assert base64.b64decode(data) == DOT.data
    for markup in (f'<img src="{DOT.address}0">', f'<a href="{DOT.address}">a</a>', f'<img srcset="{DOT.address}">'):
        with pytest.raises(RenderError, match="stands alone"):
            write_html(PAGE.format(markup), [DOT])


def test_references_within_and_to_people_are_kept() -> None:
    markup = (
        '<a href="#a">a</a><a href="mailto:a@example.org">b</a><a href="tel:+49301234">c</a>'
        '<svg><title>S</title><rect fill="url(#p)"/></svg>'
    )
    assert write_html(PAGE.format(markup)) == PAGE.format(markup).encode()


def test_what_a_page_must_have() -> None:
    with pytest.raises(RenderError, match="^The HTML page has no language, no title, no view port"):
        write_html("<html><svg><title>only a drawing's</title></svg></html>")
