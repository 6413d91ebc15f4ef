"""The printed edition: what it fetches, what it refuses, that equal input gives equal bytes, and what it holds."""

from __future__ import annotations

import builtins
import io
import os
import re
import subprocess
import sys
from collections.abc import Callable
from pathlib import Path
from typing import Any

import pytest
from pypdf import PdfReader
from weasyprint.urls import FatalURLFetchingError

from specgen.rendering import pdf
from specgen.rendering.assets import asset
from specgen.rendering.failure import RenderError
from specgen.rendering.markdown import to_html
from specgen.rendering.pdf import asset_fetcher, write_pdf

PAGE = '<html lang="en"><head><title>T</title>{}</head><body><h1>T</h1></body></html>'
CANARY = (Path(__file__).parents[2] / "specgen" / "__init__.py").as_uri()

REACHES = {
    "attachment of a file": f'<link rel="attachment" href="{CANARY}">',
    "attachment of an address": '<link rel="attachment" href="http://127.0.0.1:9/a">',
    "style sheet": '<link rel="stylesheet" href="http://127.0.0.1:9/a.css">',
    "style import": f'<style>@import "{CANARY}";</style>',
    "style url": f'<style>body {{ background: url("{CANARY}") }}</style>',
    "font": f'<style>@font-face {{ font-family: X; src: url("{CANARY}") }} body {{ font-family: X }}</style>',
    "data": '<style>body { background: url("data:image/png;base64,AA") }</style>',
    "picture": f'<body><img alt="a" src="{CANARY}">',
    "svg picture": f'<body><svg><title>S</title><image href="{CANARY}" width="9" height="9"/></svg>',
    "template": '<link rel="attachment" href="asset:base.html.j2">',
    "climbing": '<link rel="attachment" href="asset:style/../../specgen/a.css">',
    "climbing, disguised": '<link rel="attachment" href="asset:style/%2e%2e/%2e%2e/specgen/a.css">',
}
EMBEDDED = {
    "object": f'<body><object data="{CANARY}"></object>',
    "embed": f'<body><embed src="{CANARY}">',
    "iframe": f'<body><iframe src="{CANARY}"></iframe>',
}


@pytest.mark.parametrize("case", REACHES)
def test_nothing_but_shipped_assets_is_fetched(case: str) -> None:
    with pytest.raises(RenderError, match=r"Only shipped (styles|files)"):
        write_pdf(PAGE.format(REACHES[case]), page_size="A4")


@pytest.mark.parametrize("case", EMBEDDED)
def test_embedded_pages_are_refused_and_would_not_be_fetched(case: str, monkeypatch: pytest.MonkeyPatch) -> None:
    with pytest.raises(RenderError, match=f"holds a <{case}> element"):
        write_pdf(PAGE.format(EMBEDDED[case]), page_size="A4")
    monkeypatch.setattr(pdf, "check_bounds", lambda html, *, form: None)
    if case == "iframe":  # the typesetter does not know it; the page holds its heading and nothing else
        data = write_pdf(PAGE.format(EMBEDDED[case]), page_size="A4")
        assert PdfReader(io.BytesIO(data)).pages[0].extract_text().split() == ["T"]
    else:
        with pytest.raises(RenderError, match="Only shipped styles"):
            write_pdf(PAGE.format(EMBEDDED[case]), page_size="A4")


def test_the_fetcher_serves_assets_by_name() -> None:
    response = asset_fetcher().fetch("asset:style/print.css")
    assert (response.read(), response.content_type) == (asset("style/print.css").read_bytes(), "text/css")


@pytest.mark.parametrize(
    "url", [CANARY, "asset:/etc/a.css", "asset:fonts/OFL.txt", "http://127.0.0.1:9/a.css", "print.css"]
)
def test_the_fetcher_refuses_in_a_way_the_typesetter_cannot_swallow(url: str) -> None:
    with pytest.raises(FatalURLFetchingError):
        asset_fetcher().fetch(url)


COMPLAINTS = {
    # Whether or not the machine has a font for it: another machine would set it differently.
    "sign outside the fonts": ("<body><p>\u26a0</p>", "the supplied fonts do not contain “\u26a0” (U+26A0); write it"),
    "script outside the fonts": (
        "<body><p>\u4e2d</p>",
        "the supplied fonts do not contain “\u4e2d” (U+4E2D); write it",
    ),
    "font outside ours": (
        "<body><p style='font-family: monospace'>Zu</p>",
        "do not contain “Z” (U+005A), “u” (U+0075)",
    ),
    "unknown property": ("<style>p { colr: red }</style>", "unknown property"),
    "broken anchor": ('<body><a href="#none">a</a>', "No anchor #none for internal URI reference"),
    "relative picture": ('<body><img alt="a" src="a.png">', "Relative URI reference without a base URI: a.png"),
}


@pytest.mark.parametrize("case", COMPLAINTS)
def test_what_the_typesetter_complains_of_is_an_error(case: str) -> None:
    markup, message = COMPLAINTS[case]
    with pytest.raises(RenderError, match=re.escape(message)):
        write_pdf(PAGE.format(markup), page_size="A4")


def test_a_page_needs_title_language_and_a_known_size() -> None:
    with pytest.raises(RenderError, match="has no title"):
        write_pdf('<html lang="en"><p>a</p></html>', page_size="A4")
    with pytest.raises(RenderError, match='Missing required "lang"'):
        write_pdf("<html><title>T</title><p>a</p></html>", page_size="A4")
    with pytest.raises(RenderError, match="page size 'A3' is unknown"):
        write_pdf(PAGE, page_size="A3")  # type: ignore[arg-type]  # what a caller without types may do


def test_a_machine_without_pango_is_told_what_to_install(monkeypatch: pytest.MonkeyPatch) -> None:
    real = builtins.__import__

    def without_pango(name: str, *arguments: Any, **options: Any) -> Any:
        if name.startswith("weasyprint"):
            raise OSError("cannot load library 'libpango-1.0-0'")
        return real(name, *arguments, **options)

    pdf.typesetter.cache_clear()
    monkeypatch.setattr(builtins, "__import__", without_pango)
    with pytest.raises(RenderError, match=r"needs the text library Pango.*libpango-1\.0-0"):
        write_pdf(PAGE, page_size="A4")


# The moment is named in the time zone of the process.
SAMPLE_DIGEST = """
import datetime, hashlib, runpy, sys
sys.path.insert(0, sys.argv[1])
from specgen.rendering.attachments import Attachment
from specgen.rendering.pdf import write_pdf
page = runpy.run_path(sys.argv[2])["filled"]("print")
attachments = [
    Attachment(f"{name}.json", name.encode() * 99, "application/json", "Source", f"Part {name}") for name in ("b", "a")
]
for dated in (None, datetime.datetime.fromtimestamp(1_774_949_400).astimezone()):
    data = write_pdf(page, page_size="A4", author="A. Writer", attachments=attachments, dated=dated)
    print(hashlib.sha256(data).hexdigest())
"""


def test_equal_input_gives_equal_bytes_in_any_folder_time_zone_and_process(tmp_path: Path) -> None:
    paths = [str(Path(__file__).parents[2]), str(Path(__file__).with_name("conftest.py"))]
    runs = []
    for zone, seed in (("Pacific/Auckland", "1"), ("America/St_Johns", "77")):
        here = tmp_path / seed
        here.mkdir()
        runs.append(
            subprocess.Popen(
                [sys.executable, "-c", SAMPLE_DIGEST, *paths],
                cwd=here,
                env=os.environ | {"TZ": zone, "PYTHONHASHSEED": seed},
                stdout=subprocess.PIPE,
                text=True,
            )
        )
    ones, others = (run.communicate(timeout=120)[0].split() for run in runs)
    assert ones == others
    assert len(set(ones)) == 2


def test_what_the_sample_holds(sample: Callable[..., str]) -> None:
    data = write_pdf(sample("print"), page_size="A4", author="A. Writer")
    reader = PdfReader(io.BytesIO(data))
    texts = [" ".join(page.extract_text().split()) for page in reader.pages]
    assert [f"Page {n} of {len(texts)}" in text for n, text in enumerate(texts, 1)] == [True] * len(texts)
    assert [text.count("DRAFT") for text in texts] == [2] * len(texts)
    assert ["MS-0417, revision B" in text for text in texts] == [False, True, True]  # the first page has its masthead
    readings = [text for text in texts if "upper side" in text]
    assert ["Reading 1 Reading 2 Reading 3" in text for text in readings] == [True] * len(readings)
    assert len(readings) >= 2
    assert reader.metadata is not None
    assert (reader.metadata.title, reader.metadata.author) == ("MS-0417 Touch-up of galvanised handrails", "A. Writer")
    assert (reader.metadata.creation_date, reader.trailer["/Root"]["/Lang"]) == (None, "en")
    assert {tuple(map(round, map(float, page.mediabox))) for page in reader.pages} == {(0, 0, 595, 842)}


def test_lists_within_lists_are_set_in_the_shipped_fonts() -> None:
    page = PAGE.replace("<h1>T</h1>", "<h1>T</h1>" + to_html("- one\n    - two\n        - three\n            1. four"))
    text = PdfReader(io.BytesIO(write_pdf(page.format(""), page_size="A4"))).pages[0].extract_text()
    assert sorted(text.split()) == sorted(
        ["T", "•", "one", "•", "two", "•", "three", "1.", "four"]
    )  # in whatever order it is drawn


def test_letter_paper_without_the_draft_mark(sample: Callable[..., str]) -> None:
    brief = {"readings": {"caption": "C", "columns": [], "rows": []}}
    reader = PdfReader(io.BytesIO(write_pdf(sample("print", draft=False, **brief), page_size="Letter")))
    assert {tuple(map(float, page.mediabox)) for page in reader.pages} == {(0.0, 0.0, 612.0, 792.0)}
    assert ["DRAFT" in page.extract_text() for page in reader.pages] == [False] * len(reader.pages)


def test_importing_the_module_loads_no_typesetter() -> None:
    code = "import sys, specgen.rendering.pdf, specgen.rendering.html; print('weasyprint' in sys.modules)"
    run = subprocess.run(
        [sys.executable, "-c", code], cwd=Path(__file__).parents[2], capture_output=True, text=True, check=True
    )
    assert run.stdout == "False\n"
