"""Issuing: what a record holds, how revisions are counted, and that the real pages say what was issued."""

from __future__ import annotations

import io
import json
import os
import shutil
import subprocess
import sys
from datetime import UTC, date, datetime
from pathlib import Path

import pytest
from pypdf import PdfReader

from specgen.checking import check
from specgen.comparison.reference_snapshot import reference_snapshot
from specgen.issuing.issue import issue
from specgen.issuing.refused import Refused
from specgen.model.field_types import parse_span
from specgen.model.project import Numbering, NumberingScheme, Policies
from specgen.register.certificate import fingerprint, read_certificate
from specgen.register.failure import RegisterError
from specgen.register.folder import history_of
from specgen.register.issued_file import verify
from specgen.register.json_text import sha256
from specgen.register.numbering import next_revision, revision_at
from specgen.register.pdf_attachments import attachments
from specgen.register.policy import next_review
from tests.good_spec import ON
from tests.register.conftest import BEGIN, Desk, no_versions, small_pdf


def test_a_record_holds_what_it_rests_on(desk: Desk) -> None:
    with (desk.folder / "project.yaml").open("a") as out:
        out.write(
            "  policies: {review_every: 12 months}\n  distribution:\n    - {id: shop, name: Body shop}\n"
            "    - {id: lab, name: Laboratory, documents: [DS-primer]}\n"
        )
    desk.revise("DS-primer")
    kept = desk.revise("MS-001", reason="first issue of the doors").kept
    record = kept.record
    assert kept.folder == desk.register / "MS-001" / "0001"
    assert (record.kind, record.number, record.revision, record.previous) == ("issue", 1, "A", "")
    assert (record.about, record.subject, record.title, record.reason) == (
        "job",
        "refit",
        "Door and step",
        "first issue of the doors",
    )
    assert record.time == "2026-11-25T09:04:00Z"
    assert record.next_review == "2027-11-25"
    assert record.holders == ("Body shop",)
    assert [(one.document, one.revision, one.differs) for one in record.references] == [
        ("DS-primer", "A", False),
        ("DS-base", "", False),
        ("DS-clear", "", False),
        ("DS-barrier", "", False),
    ]
    assert set(record.files) == {
        "approvals/approve-ada-quill.json",
        "certificate.json",
        "documents/MS-001-method-statement.pdf",
        "model.customer.json",
        "model.maker.json",
        "sources/job.yaml.txt",
        "sources/products.yaml.txt",
        "sources/project.yaml.txt",
    }
    assert (kept.folder / "sources" / "job.yaml.txt").read_bytes() == (desk.folder / "job.yaml").read_bytes()
    assert {"content of table binder_families", "content of table overcoat_matrix"} <= set(record.snapshot)
    assert set(record.snapshot) < set(reference_snapshot())
    # the outside verifier
    checked = subprocess.run(["sha256sum", "-c", "--strict", "SHA256SUMS"], cwd=kept.folder, capture_output=True)
    assert checked.returncode == 0, checked.stderr
    assert len(checked.stdout.splitlines()) == len(record.files) + 1


def test_the_pictures_a_document_names_are_kept_with_its_sources(desk: Desk) -> None:
    (desk.folder / "pictures").mkdir()
    drawn = (desk.folder / "sketch.svg").rename(desk.folder / "pictures" / "door.svg")
    shutil.copy(drawn, desk.folder / "unused.svg")
    figure = "[{id: door, file: pictures/door.svg, caption: Door, alternative_text: The door from outside}]"
    desk.change("count: 2, shapes:", f"count: 2, figures: {figure}, shapes:")
    desk.revise()
    kept = history_of(desk.register, "MS-001").kept[-1]
    assert "sources/pictures/door.svg" in kept.record.files
    assert not any("unused" in name for name in kept.record.files)
    # another picture under the same name is another content: what was approved is not what would be issued
    desk.approve()
    drawn.write_bytes(drawn.read_bytes().replace(b"#111111", b"#222222"))
    with pytest.raises(Refused):
        desk.issue()


def test_the_register_beside_the_sources_is_no_source(desk: Desk) -> None:
    before = check(desk.folder, ON)
    desk.revise()
    after = check(desk.folder, ON)
    assert before.report == after.report
    assert list(before.loaded.places) == list(after.loaded.places)


def test_revisions_go_on_and_each_knows_the_one_before(desk: Desk) -> None:
    issued = [desk.revise(reason=f"number {n}") for n in range(4)]
    records = [one.kept.record for one in issued]
    assert [record.revision for record in records] == ["A", "B", "C", "D"]
    assert [record.previous for record in records] == ["", *(one.kept.sha256 for one in issued[:3])]
    certificates = [read_certificate((one.kept.folder / "certificate.json").read_bytes()) for one in issued]
    assert [one.previous for one in certificates] == ["", *(record.certificate for record in records[:3])]


def test_letters_and_numbers() -> None:
    letters = Numbering()
    assert [revision_at(n, letters) for n in (0, 7, 8, 19, 20, 21, 40)] == ["A", "H", "J", "Y", "AA", "AB", "BA"]
    numbers = Numbering(scheme=NumberingScheme.NUMBERS.value)
    assert [revision_at(n, numbers) for n in (0, 1, 9)] == ["1", "2", "10"]
    names: list[str] = []
    for _ in range(900):
        names.append(next_revision(names, letters))
    assert len(set(names)) == 900
    assert not {sign for name in names for sign in name} & set("IOQSXZ")
    with pytest.raises(RegisterError, match="which is taken"):
        next_revision(["B"], letters)


def test_the_next_review_by_the_calendar() -> None:
    yearly = Policies.model_construct(review_every=parse_span("12 months"))
    monthly = Policies.model_construct(review_every=parse_span("1 month"))
    assert next_review(date(2024, 2, 29), yearly) == "2025-02-28"
    assert next_review(date(2026, 12, 31), monthly) == "2027-01-31"
    assert next_review(date(2026, 1, 31), monthly) == "2026-02-28"
    assert next_review(date(2026, 1, 31), None) == ""
    assert next_review(date(9999, 12, 31), monthly) == ""


def test_equal_input_gives_equal_records(desk: Desk) -> None:
    desk.approve()
    both = [
        issue(
            desk.folder,
            desk.folder / name,
            "MS-001",
            reason="r",
            on=ON,
            now=BEGIN.replace(hour=12),
            printer=small_pdf,
            versions=no_versions,
        )
        for name in ("one", "two")
    ]
    first, second = (one.kept for one in both)
    assert first.sha256 == second.sha256
    for path in first.folder.rglob("*.*"):
        assert path.read_bytes() == (second.folder / path.relative_to(first.folder)).read_bytes(), path


def test_a_clock_that_went_back_is_refused(desk: Desk) -> None:
    desk.revise()
    desk.approve()
    with pytest.raises(RegisterError, match="set the clock"):
        desk.issue(now=datetime(2026, 11, 24, tzinfo=UTC))
    assert len(history_of(desk.register, "MS-001").kept) == 1


def test_a_fingerprint_is_the_hash_in_signs_for_telephones() -> None:
    # by hand: the first 80 bits of this hash are 5ade6a573ecd76e64fab in hex
    hashed = "5ade6a573ecd76e64fab" + "0" * 44
    bits = f"{int('5ade6a573ecd76e64fab', 16):080b}"
    signs = ["0123456789ABCDEFGHJKMNPQRSTVWXYZ"[int(bits[at : at + 5], 2)] for at in range(0, 80, 5)]
    assert fingerprint(hashed) == "-".join("".join(signs[at : at + 4]) for at in range(0, 16, 4))


def test_the_pages_say_what_was_issued(desk: Desk) -> None:
    """The one issue of the suite that sets real pages: a data sheet, read back by a public PDF library."""
    desk.approve("DS-barrier", meaning="May be handed out.")
    done = issue(desk.folder, desk.register, "DS-barrier", reason="first sheet", on=ON, now=desk.now())
    assert sorted(path.name for path in done.documents) == ["DS-barrier-data-sheet.html", "DS-barrier-data-sheet.pdf"]
    assert set(done.kept.record.engines) == {"specgen", "weasyprint", "pango", "harfbuzz"}
    pdf = next(path for path in done.documents if path.suffix == ".pdf")
    reader = PdfReader(io.BytesIO(pdf.read_bytes()))
    pages = [" ".join(page.extract_text().split()) for page in reader.pages]
    assert all(f"revision A, 2026-11-25, certificate {done.fingerprint}" in page for page in pages)
    assert not any("DRAFT" in page for page in pages)
    assert any(
        "Ada Quill, 2026-11-25 09:01:00 UTC: May be handed out. (recorded, not signed)" in page for page in pages
    )
    carried = attachments(pdf.read_bytes())
    assert set(carried) == {"certificate.json", "model.customer.json"}
    assert sha256(carried["certificate.json"]) == done.kept.record.certificate
    assert carried["model.customer.json"] == (done.kept.folder / "model.customer.json").read_bytes()
    assert verify(pdf).word == "consistent, no proof of origin"
    assert verify(pdf, desk.register).word == "unaltered and current"
    html = next(path for path in done.documents if path.suffix == ".html").read_text()
    assert "DRAFT" not in html
    assert done.fingerprint in html
    for secret in ("resin and pigment", json.loads((done.kept.folder / "model.maker.json").read_text())["salt"]):
        assert secret not in html
        assert not any(secret.encode() in one for one in carried.values())


def test_a_source_changed_meanwhile_stops_it(desk: Desk) -> None:
    desk.approve()

    def print_and_change(found, issue):
        (desk.folder / "job.yaml").write_text((desk.folder / "job.yaml").read_text() + "\n# later\n")
        return small_pdf(found, issue)

    with pytest.raises(RegisterError, match="changed while they were being issued"):
        desk.issue(printer=print_and_change)
    assert not Path(desk.register).exists()


_ELSEWHERE = """
import sys
from datetime import UTC, date, datetime
from pathlib import Path
from specgen.issuing.refused import Refused
from specgen.issuing.issue import issue
folder = Path(sys.argv[1])
moment = datetime(2026, 11, 25, 12, tzinfo=UTC)
issue(folder, folder / "register", "DS-barrier", reason="r", on=date(2026, 11, 25), now=moment)
"""


def test_two_processes_in_two_folders_and_time_zones_issue_the_same_bytes(desk: Desk, tmp_path: Path) -> None:
    """Real pages: every file of both records, the PDF too, is the same to the byte."""
    desk.approve("DS-barrier")
    other = tmp_path / "elsewhere" / "deeper"
    shutil.copytree(desk.folder, other)
    for folder, zone, seed in ((desk.folder, "Asia/Tokyo", "1"), (other, "America/Lima", "2")):
        around = {**os.environ, "TZ": zone, "PYTHONHASHSEED": seed}
        command = [sys.executable, "-c", _ELSEWHERE, str(folder)]
        subprocess.run(command, cwd=folder, env=around, check=True)
    first, second = desk.folder / "register", other / "register"
    names = sorted(path.relative_to(first) for path in first.rglob("*") if path.is_file())
    assert names == sorted(path.relative_to(second) for path in second.rglob("*") if path.is_file())
    assert Path("DS-barrier/0001/documents/DS-barrier-data-sheet.pdf") in names
    assert [name for name in names if (first / name).read_bytes() != (second / name).read_bytes()] == []
