"""Pages of printed documents: full enough, as many as they may be, and no heading left alone at the foot of one."""

from __future__ import annotations

import io
import shutil
from pathlib import Path

import pypdf
import pytest
import yaml

from specgen.checking import Checked, check
from specgen.printing.documents import print_documents
from tests.documents.filled_pages import FOOT, MM, TOP, pages_of
from tests.good_spec import DEMO, DEMO_RANGE, ON

# kind, what is asked: pages with calculations
BUDGET: dict[tuple[str, str], int] = {
    ("method-statement", "tower-wagon-doors"): 10,
    ("method-statement", "rail-grinder-hood"): 16,
    ("inspection-plan", "tower-wagon-doors"): 2,
    ("inspection-plan", "sand-tramcar-sides"): 3,
    ("order-list", ""): 4,
    ("range-overview", ""): 1,
}
A4 = 297 * MM
# of a data sheet, without its calculations
SHEET = 2
# a row of the table of claims takes two lines or more
CLAIMS, ROW = 3, 7 * MM
PRODUCTS = sorted(
    product["id"]
    for file in (DEMO_RANGE / "products").glob("*.yaml")
    for product in yaml.safe_load(file.read_text("utf-8"))["products"]
)


@pytest.fixture(scope="module")
def tramway() -> Checked:
    """A customer's folder."""
    return check(DEMO, ON)


@pytest.fixture(scope="module")
def products() -> Checked:
    """The range whose sheets and overview are printed in its own folder."""
    return check(DEMO_RANGE, ON)


@pytest.mark.parametrize(("kind", "asked"), BUDGET)
def test_pages_are_full_and_no_heading_stands_alone(kind: str, asked: str, request: pytest.FixtureRequest) -> None:
    most = BUDGET[kind, asked]
    subject = {"products" if kind == "data-sheet" else "jobs": [asked]} if asked else {}
    folder: Checked = request.getfixturevalue("products" if kind == "range-overview" else "tramway")
    (data,) = print_documents(folder, documents=[kind], formats=["pdf"], **subject).values()
    pages = pages_of(data)
    assert len(pages.shares) <= most
    assert pages.wrong() == []


@pytest.mark.parametrize("product", PRODUCTS)
def test_a_data_sheet_takes_two_pages_and_one_for_its_calculations(product: str, products: Checked) -> None:
    (data,) = print_documents(products, documents=["data-sheet"], formats=["pdf"], products=[product]).values()
    pages, texts = pages_of(data), [page.extract_text() for page in pypdf.PdfReader(io.BytesIO(data)).pages]
    assert pages.wrong() == []
    assert len(texts) <= SHEET + 1
    # the head of a page names the section it begins in
    assert all("Annex: calculations |" in text for text in texts[SHEET:])
    # calculations of few lines stay together, so that none is left over for a page of its own
    assert sum("Annex: calculations" in text for text in texts) == 1
    # room is kept for six lines of claims
    claims = len(products.loaded.spec.products[product].claims)
    room = (1 - pages.shares[SHEET - 1]) * (A4 - TOP - FOOT) if len(texts) > SHEET else A4
    assert room >= (CLAIMS - claims) * ROW


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
