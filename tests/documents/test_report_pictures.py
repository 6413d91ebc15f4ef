"""The picture of a test stands beside its results, on the page of its test."""

from __future__ import annotations

from io import BytesIO

from pypdf import PdfReader

from specgen.checking import check
from specgen.printing.documents import print_documents
from tests.good_spec import DEMO_RANGE, ON


def test_a_picture_stands_on_the_page_of_its_test_and_the_last_page_holds_more_than_one_test() -> None:
    files = print_documents(check(DEMO_RANGE, ON), documents=["test-report"], formats=["pdf"])
    pages = [page.extract_text() for page in PdfReader(BytesIO(files["ORM-187-2026-test-report.pdf"])).pages]
    first, last = (" ".join(page.split()) for page in pages)
    assert first.count("after 720 h of exposure") == 3
    assert "Figure 1" in first
    assert last.count("of exposure to neutral salt spray") == 4
