"""Pages of printed documents: full enough, as many as they may be, and no heading left alone at the foot of one."""

from __future__ import annotations

import io
import re
import shutil
from pathlib import Path

import pypdf
import pytest

from specgen.checking import Checked, check
from specgen.printing.documents import print_documents
from tests.documents.filled_pages import pages_of
from tests.good_spec import DEMO, DEMO_RANGE, ON

# kind, what is asked: pages with calculations
BUDGET: dict[tuple[str, str], int] = {
    ("method-statement", "tower-wagon-doors"): 10,
    ("method-statement", "rail-grinder-hood"): 16,
    ("data-sheet", "primer-210"): 3,
    ("data-sheet", "surfacer-230"): 3,
    ("data-sheet", "topcoat-410"): 3,
    # calculations of few lines stay together, so that none is left over for a page of its own
    ("data-sheet", "zinc-250"): 3,
    ("data-sheet", "clear-330"): 3,
    ("order-list", ""): 4,
    ("range-overview", ""): 1,
}


@pytest.fixture(scope="module")
def demo() -> dict[str, Checked]:
    """The tramway's folder, and the range whose sheets and overview are printed in its own."""
    tramway, products = check(DEMO, ON), check(DEMO_RANGE, ON)
    return {kind: products if kind in ("data-sheet", "range-overview") else tramway for kind, _ in BUDGET}


@pytest.mark.parametrize(("kind", "asked"), BUDGET)
def test_pages_are_full_and_no_heading_stands_alone(kind: str, asked: str, demo: dict[str, Checked]) -> None:
    most = BUDGET[kind, asked]
    subject = {"jobs" if kind == "method-statement" else "products": [asked]} if asked else {}
    (data,) = print_documents(demo[kind], documents=[kind], formats=["pdf"], **subject).values()
    pages = pages_of(data)
    assert len(pages.shares) <= most
    assert pages.wrong() == []


@pytest.mark.parametrize("product", ["surfacer-230", "zinc-250", "clear-330", "clear-430"])
def test_short_calculations_are_not_parted(product: str, demo: dict[str, Checked]) -> None:
    (data,) = print_documents(
        demo["data-sheet"], documents=["data-sheet"], formats=["pdf"], products=[product]
    ).values()
    texts = [page.extract_text() for page in pypdf.PdfReader(io.BytesIO(data)).pages]
    (whole,) = [text for text in texts if re.search(r"\bW1\b.*volume", text)]
    assert all(f"W{number} " in whole for number in range(1, 7))


def test_the_door_job_takes_no_more_pages_on_letter(tmp_path: Path) -> None:
    shutil.copytree(DEMO.parent, tmp_path / "specs")
    project = tmp_path / "specs" / DEMO.name / "project.yaml"
    project.write_text(project.read_text("utf-8").replace("page_size: A4", "page_size: Letter"), "utf-8")
    checked = check(project.parent, ON)
    kinds = {"method-statement": BUDGET["method-statement", "tower-wagon-doors"], "job-card": 2}
    for kind, most in kinds.items():
        (data,) = print_documents(checked, documents=[kind], formats=["pdf"], jobs=["tower-wagon-doors"]).values()
        pages = pages_of(data)
        assert len(pages.shares) <= most
        assert kind == "job-card" or pages.wrong() == []
