"""Folders anybody can run: a claim refused for want of evidence and then allowed, one whose figure is unusual, a comparison refused and
one allowed. Each says what is told and what the data sheet prints.
"""

from __future__ import annotations

import shutil
from pathlib import Path

import pytest

from specgen.checking import check
from specgen.documents.data_sheet.view import data_sheet
from specgen.findings import Severity
from tests.documents.conftest import context
from tests.good_spec import ON

FOLDER = Path(__file__).parents[1] / "specs_demo" / "evidence"
REFUSED = {
    "claim_refused": [("EVD001", Severity.WARNING, "products.barrier.claims.salt.evidence")],
    "implausible": [
        ("TST003", Severity.WARNING, "products.barrier.claims.pull.text"),
        ("TST005", Severity.WARNING, "products.barrier.claims.pull.test.limit"),
    ],
    "comparison_refused": [("EVD004", Severity.ERROR, "products.barrier.claims.less.evidence.than")],
}
ALLOWED = ["claim_allowed", "comparison_allowed"]


def _printed(name: str) -> tuple[tuple[str, ...], ...]:
    """The rows of claims of the data sheet; what may not be issued is drawn up here to see that it is left out."""
    spec = check(FOLDER / name, ON).loaded.spec
    assert spec is not None
    shown = data_sheet(spec.products["barrier"], context(spec)).claims
    assert shown is not None
    return shown.table.rows


def test_every_folder_is_looked_at() -> None:
    assert {folder.name for folder in FOLDER.iterdir()} == {*REFUSED, *ALLOWED}


@pytest.mark.parametrize("name", REFUSED)
def test_a_claim_that_is_refused_is_told_and_not_printed(name: str) -> None:
    found = [(one.id, one.severity, one.path) for one in check(FOLDER / name, ON).report]
    assert [one for one in found if one in REFUSED[name]] == REFUSED[name]
    assert [one for one in found if not one[0].startswith(("EVD", "TST"))] == []
    assert _printed(name) == ()


def test_an_unusual_value_is_told_with_what_else_it_may_mean() -> None:
    told = next(one.what for one in check(FOLDER / "implausible", ON).report if one.id == "TST003")
    for reading in ("bar", "psi with a zero lost", "lbf on a 12.7 mm dolly"):
        assert reading in told


@pytest.mark.parametrize("name", ALLOWED)
def test_a_claim_with_its_evidence_is_printed(name: str) -> None:
    assert list(check(FOLDER / name, ON).report) == []
    (row,) = _printed(name)
    text, method, panels, result = row
    assert "ISO 4628-8:2012" in method
    assert "ISO 9227:2022" in method
    assert "480\N{NO-BREAK SPACE}h" in method
    assert "82\N{NO-BREAK SPACE}µm" in panels
    assert result.startswith(
        "mean 1.37\N{NO-BREAK SPACE}mm (1.1 to 1.6\N{NO-BREAK SPACE}mm, n\N{NO-BREAK SPACE}=\N{NO-BREAK SPACE}3)"
    )
    assert result.endswith("; T-12/2026")
    assert ("compared with" in result) is (name == "comparison_allowed")
    assert text


def test_a_report_of_another_formulation_is_no_evidence(tmp_path: Path) -> None:
    inside = Path(shutil.copytree(FOLDER / "claim_allowed", tmp_path / "folder"))
    file = inside / "reports.yaml"
    file.write_text(file.read_text().replace("formulated: 2025-06-02", "formulated: 2024-01-15"))
    (told,) = check(inside, ON).report
    assert (told.id, told.path) == ("EVD003", "products.barrier.claims.salt.evidence")
    assert "formulation of the product: 2025-06-02; tested: 2024-01-15" in told.what


@pytest.mark.parametrize(
    ("was", "written", "expected"),
    [
        ("started: 2026-02-10", "started: 2026-03-10", ("EVD005", "reports.tarn-12.dates.ended")),
        ("number: T-12/2026", "number: DS-40", ("EVD007", "reports.tarn-12.number")),
        ("    signed_by", "    figures: [{id: one, file: lost.png, caption: A, alternative_text: B}]\n    signed_by", ("MOD011", "reports.tarn-12.figures.one.file")),
        ("    signed_by", "    files: [{id: one, file: lost.pdf}]\n    signed_by", ("MOD013", "reports.tarn-12.files.one.file")),
        ("value: 1.4 mm", "value: 1.4 furlongs", ("MOD003", "reports.tarn-12.tests.creep.results.O1.value")),
        ("value: 1.4 mm", "value: 1.4 MPa", ("TST004", "reports.tarn-12.tests.creep.results.O1.value")),
        ("value: Ri 0", "value: Ri 7", ("TST004", "reports.tarn-12.tests.rust.results.O1.value")),
        ("method: scribe_creep", "method: scribe_crawl", ("MOD003", "reports.tarn-12.tests.creep.method")),
        ("    signed_by", "    repeats: T-12/2026\n    signed_by", ("EVD007", "reports.tarn-12.repeats")),
    ],
)  # fmt: skip
def test_what_is_wrong_with_a_report_is_told_where_it_stands(
    tmp_path: Path, was: str, written: str, expected: tuple[str, str]
) -> None:
    inside = Path(shutil.copytree(FOLDER / "claim_allowed", tmp_path / "folder"))
    file = inside / "reports.yaml"
    file.write_text(file.read_text().replace(was, written, 1))
    found = [(one.id, one.path) for one in check(inside, ON).report if one.severity is Severity.ERROR]
    assert expected in found


def test_a_file_that_was_changed_is_told(tmp_path: Path) -> None:
    inside = Path(shutil.copytree(FOLDER / "claim_allowed", tmp_path / "folder"))
    (inside / "t-12.pdf").write_bytes(b"%PDF-1.7 as received")
    file = inside / "reports.yaml"
    whole = file.read_text()
    file.write_text(whole.replace("    signed_by", "    files: [{id: one, file: t-12.pdf}]\n    signed_by", 1))
    (told,) = check(inside, ON).report
    assert (told.id, told.severity) == ("EVD006", Severity.NOTE)
    digest = told.remedy.removeprefix("state sha256: ")
    stated = f"    files: [{{id: one, file: t-12.pdf, sha256: {digest}}}]\n    signed_by"
    file.write_text(whole.replace("    signed_by", stated, 1))
    assert list(check(inside, ON).report) == []
    (inside / "t-12.pdf").write_bytes(b"%PDF-1.7 saved again")
    (told,) = check(inside, ON).report
    assert (told.id, told.severity, told.path) == ("EVD006", Severity.ERROR, "reports.tarn-12.files.one.sha256")
