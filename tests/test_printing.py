"""What is printed under which name, and what is refused. Pages are set once; everything else goes by HTML and CSV."""

from __future__ import annotations

import copy
import io
from collections.abc import Mapping
from datetime import date
from pathlib import Path
from typing import Any

import pypdf
import pytest

from specgen.checking import Checked, check
from specgen.printing.documents import DOCUMENTS, FORMATS, Refused, print_documents
from tests.good_spec import checked, good, put, take_out
from tests.page_text import running_text

SCREEN = ("html", "csv")
DEMO = Path(__file__).parents[1] / "specs_demo"
LANDSCAPE_LETTER = (792, 612)


@pytest.fixture(scope="module")
def good_checked() -> Checked:
    return checked(good())


def _changed(**changes: str) -> Checked:
    spec: dict[str, Any] = good()
    for path, value in changes.items():
        put(spec, path.replace("__", "."), value)
    return checked(spec)


def test_names_and_formats() -> None:
    assert DOCUMENTS == (
        "method-statement",
        "job-card",
        "hazard-card",
        "data-sheet",
        "label-sheet",
        "range-overview",
        "materials-list",
        "order-list",
        "offer-review",
        "qualification-matrix",
        "test-report",
        "inspection-plan",
        "record-sheets",
    )
    assert FORMATS == ("pdf", "html", "csv")


def test_every_document_has_its_name_and_is_told(good_checked: Checked) -> None:
    told: list[str] = []
    files = print_documents(good_checked, formats=SCREEN, told=told.append)
    assert list(files) == told
    assert told == [
        "MS-001-method-statement.html",
        "MS-001-job-card.html",
        "MS-001-hazard-card.html",
        "DS-primer-data-sheet.html",
        "DS-base-data-sheet.html",
        "DS-clear-data-sheet.html",
        "DS-barrier-data-sheet.html",
        "DS-primer-label-sheet.html",
        "DS-base-label-sheet.html",
        "DS-clear-label-sheet.html",
        "DS-barrier-label-sheet.html",
        "RO-works-fleet-range-overview.html",
        "MS-001-materials-list.csv",
        "OL-works-fleet-order-list.html",
        "OL-works-fleet-order-list.csv",
        "MS-001-inspection-plan.html",
        "MS-001-record-sheets.csv",
    ]


@pytest.mark.parametrize(
    ("asked", "expected"),
    [
        ({"documents": ["materials-list"]}, ["MS-001-materials-list.csv"]),
        ({"documents": ["data-sheet"], "products": ["base"]}, ["DS-base-data-sheet.html"]),
        ({"documents": ["data-sheet", "materials-list"], "products": [], "formats": ["csv"]}, ["MS-001-materials-list.csv"]),
        ({"documents": ["method-statement", "method-statement"]}, ["MS-001-method-statement.html"]),
    ],
)  # fmt: skip
def test_choice(asked: Mapping[str, Any], expected: list[str], good_checked: Checked) -> None:
    assert list(print_documents(good_checked, **{"formats": SCREEN, **asked})) == expected


def test_a_named_offer_is_printed_alone() -> None:
    result = check(DEMO / "waterworks", date(2026, 11, 27))
    (review,) = print_documents(result, formats=SCREEN, offers=["second-bid"])
    assert review == "OR-4103-2-offer-review.html"
    both = print_documents(result, documents=["offer-review", "materials-list"], formats=SCREEN, offers=["first-bid"])
    assert [name for name in both if "offer" in name] == ["OR-4103-1-offer-review.html"]
    assert any("materials-list" in name for name in both)
    with pytest.raises(Refused, match="there is no offer third-bid; there is: first-bid, second-bid"):
        print_documents(result, offers=["third-bid"])


def test_a_named_job_brings_the_products_it_uses() -> None:
    spec = good()
    # a copy through and through, for YAML writes what is shared as an anchor
    spec["products"].append({**copy.deepcopy(spec["products"][1]), "id": "spare", "name": "Spare"})
    result = checked(spec)
    of_job = print_documents(result, documents=["data-sheet"], formats=["html"], jobs=["refit"])
    assert list(of_job) == [f"DS-{name}-data-sheet.html" for name in ("primer", "base", "clear", "barrier")]
    assert len(print_documents(result, documents=["data-sheet"], formats=["html"])) == 5


def test_calculations_apart_are_a_file_beside_their_document() -> None:
    result = _changed(project__calculations="apart")
    kinds = ["method-statement", "data-sheet", "order-list"]
    files = print_documents(result, documents=kinds, formats=SCREEN, products=["primer"])
    assert list(files) == [
        "MS-001-method-statement.html",
        "MS-001-method-statement-calculations.html",
        "DS-primer-data-sheet.html",
        "DS-primer-data-sheet-calculations.html",
        "OL-works-fleet-order-list.html",
        "OL-works-fleet-order-list.csv",
        "OL-works-fleet-order-list-calculations.html",
    ]
    page = files["MS-001-method-statement-calculations.html"].decode()
    assert "<h1>Calculations of the method statement</h1>" in page
    assert "MS-001-method-statement</span>" in page
    assert ">W1</th>" in page


@pytest.mark.parametrize(
    ("asked", "why"),
    [
        ({"documents": ["poster"]}, "there is no document poster; there is: method-statement, job-card, hazard-card, data-sheet, label-sheet, range-overview, materials-list, order-list, offer-review, qualification-matrix, test-report, inspection-plan, record-sheets"),
        ({"formats": ["doc"]}, "there is no format doc; there is: pdf, html, csv"),
        ({"jobs": ["other"]}, "there is no job other; there is: refit"),
        ({"products": ["other"]}, "there is no product other; there is: primer, base, clear, barrier"),
        ({"documents": ["materials-list"], "formats": ["pdf"]}, "materials-list does not come in the format pdf"),
        ({"documents": ["data-sheet"], "products": []}, "the folder holds no product"),
        ({"documents": ["job-card"], "formats": ["csv"]}, "job-card does not come in the format csv"),
    ],
)  # fmt: skip
def test_refusals(asked: Mapping[str, Any], why: str, good_checked: Checked) -> None:
    with pytest.raises(Refused) as refused:
        print_documents(good_checked, **asked)
    assert str(refused.value) == why


def test_a_folder_without_jobs() -> None:
    spec = good()
    take_out(spec, "jobs.refit")
    result = checked(spec)
    with pytest.raises(Refused, match=r"^the folder holds no job$"):
        print_documents(result, documents=["method-statement"])
    with pytest.raises(Refused, match=r"^the folder holds no job$"):
        print_documents(result, documents=["order-list", "job-card"])
    files = print_documents(result, formats=SCREEN, products=["primer"])
    assert list(files) == [
        "DS-primer-data-sheet.html",
        "DS-primer-label-sheet.html",
        "RO-works-fleet-range-overview.html",
    ]


def test_every_safety_part_defers_to_the_safety_data_sheet(good_checked: Checked) -> None:
    kinds = ["method-statement", "hazard-card", "data-sheet", "label-sheet"]
    files = print_documents(good_checked, documents=kinds, products=["clear"])
    texts = {
        file: running_text(data.decode())
        if file.endswith(".html")
        else " ".join(page.extract_text() for page in pypdf.PdfReader(io.BytesIO(data)).pages)
        for file, data in files.items()
    }
    assert len(texts) == 8
    words = {file: " ".join(text.split()) for file, text in texts.items()}
    assert [file for file, text in words.items() if "current safety data sheet" not in text] == []
    assert [file for file, text in words.items() if "SDS-100, revision 3, 2026-02-01" not in text] == []


def test_a_folder_with_errors() -> None:
    result = _changed(systems__cab__layers__primer__role="clear")
    with pytest.raises(Refused, match=r"^the folder has \d+ errors?, so nothing is printed$"):
        print_documents(result)


@pytest.mark.parametrize("number", ["DS-primer", "ds-PRIMER", "DS/primer"])
def test_two_documents_of_one_file_name(number: str) -> None:
    result = _changed(products__base__document=f"{{number: {number}, title: T, owner: O}}")
    (finding,) = result.report
    assert (finding.id, finding.path) == ("DOC003", "products.base.document.number")
    stem = number.replace("/", "-")
    assert finding.what == f"the document numbers DS-primer and {number} give the same file name, {stem}"
    with pytest.raises(Refused, match=r"^the folder has 1 error, so nothing is printed$"):
        print_documents(result, documents=["data-sheet"], formats=["html"])


def test_sheet_without_document_takes_id_and_name(good_checked: Checked) -> None:
    files = print_documents(good_checked, documents=["data-sheet"], formats=["html"], products=["primer"])
    page = files["DS-primer-data-sheet.html"].decode()
    assert "<title>DS-primer Example primer</title>" in page
    assert "<h1>Example primer</h1>" in page


def test_overview_is_one_landscape_page_marked_draft() -> None:
    result = _changed(project__page_size="Letter")
    files = print_documents(result, documents=["range-overview"], formats=["pdf"])
    (page,) = pypdf.PdfReader(io.BytesIO(files["RO-works-fleet-range-overview.pdf"])).pages
    assert (round(page.mediabox.width), round(page.mediabox.height)) == LANDSCAPE_LETTER
    assert "DRAFT" in page.extract_text()
    assert "Example barrier" in page.extract_text()


def test_data_sheet_is_marked_draft_on_every_page(good_checked: Checked) -> None:
    files = print_documents(good_checked, documents=["data-sheet"], formats=["pdf"], products=["barrier"])
    pages = pypdf.PdfReader(io.BytesIO(files["DS-barrier-data-sheet.pdf"])).pages
    assert ["DRAFT" in page.extract_text() for page in pages] == [True] * len(pages)
    assert len(pages) in {2, 3}


def test_cards_promise_to_last(good_checked: Checked) -> None:
    files = print_documents(good_checked, documents=["job-card", "hazard-card"], formats=["pdf"])
    readers = {name: pypdf.PdfReader(io.BytesIO(data)) for name, data in files.items()}
    roots = {name: reader.trailer["/Root"] for name, reader in readers.items()}
    # without the metadata a file promises nothing: ISO 19005-3, clause 6.6.2, and ISO 14289-1, clause 7.1
    assert {name: "/Metadata" in root for name, root in roots.items()} == {
        "MS-001-job-card.pdf": True,
        "MS-001-hazard-card.pdf": True,
    }
    assert [bool(root["/MarkInfo"]["/Marked"]) for root in roots.values()] == [True, True]
    assert [reader.metadata and reader.metadata.title for reader in readers.values()] == [
        "MS-001 Job card",
        "MS-001 Hazard card",
    ]
