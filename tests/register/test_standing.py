"""What follows from the records: in force, superseded, withdrawn, suspect, due, acknowledged; and what is exported of them."""

from __future__ import annotations

import io
import subprocess
import zipfile
from datetime import date, datetime, timedelta
from pathlib import Path

import pytest

from specgen.comparison.reference_snapshot import reference_snapshot
from specgen.model.declaring import Audience
from specgen.model.parse import load, parse
from specgen.register.due import due
from specgen.register.export import export
from specgen.register.failure import RegisterError
from specgen.register.folder import histories, history_of
from specgen.register.frozen import frozen_sources, issued_revision
from specgen.register.notes import acknowledge, withdraw
from specgen.register.record import Record
from specgen.register.state import in_force, not_acknowledged, standing, suspects
from tests.register.conftest import BEGIN, Desk

HOLDERS = "  distribution:\n    - {id: shop, name: Body shop}\n    - {id: fleet, name: Fleet office}\n"


def _on(day: int) -> datetime:
    return BEGIN + timedelta(days=day)


def _revise(desk: Desk, day: int, document: str = "MS-001") -> None:
    desk.approve(document, now=_on(day))
    desk.issue(document, now=_on(day))


def _withdraw(desk: Desk, day: int, document: str, revision: str) -> None:
    withdraw(desk.register, document, revision, reason="film too thin", by="Ada Quill", now=_on(day))


def _found(desk: Desk) -> dict[str, object]:
    return {one.document: one for one in histories(desk.register)}


def test_which_revision_was_in_force_on_a_day(desk: Desk) -> None:
    _revise(desk, 0)  # A on 25 November
    _revise(desk, 10)  # B on 5 December
    _withdraw(desk, 20, "MS-001", "B")  # 15 December
    _revise(desk, 30)  # C on 25 December
    found = history_of(desk.register, "MS-001")
    days = {
        date(2026, 11, 24): None,
        date(2026, 11, 25): "A",
        date(2026, 12, 4): "A",
        date(2026, 12, 5): "B",
        date(2026, 12, 14): "B",
        date(2026, 12, 15): None,
        date(2026, 12, 24): None,
        date(2026, 12, 25): "C",
    }
    for day, revision in days.items():
        kept = in_force(found, day)
        assert (kept.record.revision if kept else None) == revision, day
    assert standing("A", found.kept).word == "superseded"
    assert (standing("A", found.kept).since, standing("A", found.kept).by) == ("2026-12-05", "C")
    withdrawn = standing("B", found.kept)
    assert (withdrawn.word, withdrawn.since, withdrawn.by, withdrawn.reason) == (
        "withdrawn",
        "2026-12-15",
        "Ada Quill",
        "film too thin",
    )
    assert standing("C", found.kept).word == "in force"
    assert standing("D", found.kept).word == "unknown"


def test_withdrawn_twice_or_never_issued_is_refused(desk: Desk) -> None:
    _revise(desk, 0)
    _withdraw(desk, 1, "MS-001", "A")
    for document, revision, says in (
        ("MS-001", "A", "is withdrawn already"),
        ("MS-001", "B", "there is no MS-001 B; there is: A"),
        ("MS-002", "A", "this register does not know the document"),
        ("../MS-001", "A", "does not know ../MS-001, and MS-001 has the folder"),
        ("", "A", "cannot be a document number"),
    ):
        with pytest.raises(RegisterError, match=says):
            _withdraw(desk, 2, document, revision)


def test_a_note_is_of_the_second_of_the_issue_or_later(desk: Desk) -> None:
    _revise(desk, 0)
    with pytest.raises(RegisterError, match="set the clock"):
        withdraw(desk.register, "MS-001", "A", reason="thin", by="Ada Quill", now=_on(0) - timedelta(seconds=1))
    _withdraw(desk, 0, "MS-001", "A")
    found = history_of(desk.register, "MS-001")
    assert ([kept.record.kind for kept in found.kept], found.faults) == (["issue", "withdrawal"], ())


def test_a_sheet_revised_or_withdrawn_makes_what_rests_on_it_suspect(desk: Desk) -> None:
    _revise(desk, 0, "DS-primer")
    _revise(desk, 1)
    assert list(suspects(_found(desk))) == []
    _revise(desk, 2, "DS-primer")
    _revise(desk, 3, "DS-base")
    assert [(one.record.document, one.reference, one.why) for one in suspects(_found(desk))] == [
        ("MS-001", "DS-primer A", "DS-primer B is in force since 2026-11-27"),
        ("MS-001", "DS-base", "DS-base was not issued then; A is in force"),
    ]
    _revise(desk, 4)
    assert list(suspects(_found(desk))) == []
    _withdraw(desk, 5, "DS-primer", "B")
    (one,) = suspects(_found(desk))
    assert (one.record.revision, one.reference, one.why) == (
        "B",
        "DS-primer B",
        "it was withdrawn on 2026-11-30: film too thin",
    )


def test_a_product_that_left_its_sheet_behind_makes_a_job_suspect(desk: Desk) -> None:
    _revise(desk, 0, "DS-primer")
    desk.change(
        "mass_share: 40 %, density: 0.85 g/mL}\n      - {id: gas",
        "mass_share: 40 %, density: 0.86 g/mL}\n      - {id: gas",
        "products.yaml",
    )
    _revise(desk, 1)
    (one,) = suspects(_found(desk))
    assert (one.reference, one.why) == (
        "DS-primer A",
        "the sources already said something else than it when this was issued",
    )


def test_holders_acknowledge_by_name_and_once(desk: Desk) -> None:
    with (desk.folder / "project.yaml").open("a") as out:
        out.write(HOLDERS)
    _revise(desk, 0)
    first = desk.register / "MS-001" / "0001"
    assert b"Fleet office" in (first / "model.maker.json").read_bytes()
    # who else holds a document is no matter of a customer's
    for name in ("model.customer.json", "certificate.json", "documents/MS-001-method-statement.pdf"):
        assert b"Fleet office" not in (first / name).read_bytes()
    assert not_acknowledged(history_of(desk.register, "MS-001")) == ("Body shop", "Fleet office")
    kept = acknowledge(desk.register, "MS-001", "A", by="body  SHOP", now=_on(1))
    assert (kept.record.kind, kept.record.number, kept.record.by) == ("receipt", 2, "Body shop")
    assert not_acknowledged(history_of(desk.register, "MS-001")) == ("Fleet office",)
    with pytest.raises(RegisterError, match="has acknowledged MS-001 A already"):
        acknowledge(desk.register, "MS-001", "A", by="Body shop", now=_on(2))
    with pytest.raises(RegisterError, match="Yard is no holder of MS-001 A; there is: Body shop; Fleet office"):
        acknowledge(desk.register, "MS-001", "A", by="Yard", now=_on(2))
    _revise(desk, 3)
    assert not_acknowledged(history_of(desk.register, "MS-001")) == ("Body shop", "Fleet office")
    _withdraw(desk, 4, "MS-001", "B")
    assert not_acknowledged(history_of(desk.register, "MS-001")) == ()


def _not_asked(record: Record) -> frozenset[str]:
    raise AssertionError(f"{record.document} says itself what it rests on")


def test_what_is_due_and_on_what_ground(desk: Desk) -> None:
    with (desk.folder / "project.yaml").open("a") as out:
        out.write("  policies: {review_every: 1 month, revision_forced_by: [content, review]}\n")
    _revise(desk, 0, "DS-primer")
    _revise(desk, 1)

    def listed(day: date, held: dict[str, str] | None = None) -> list[tuple[str, str, bool]]:
        spec = load(desk.folder).spec
        return [
            (one.record.document, one.why, one.forces)
            for one in due(_found(desk), spec, held or reference_snapshot(), day, _not_asked, {}, lambda job: {})
        ]

    assert listed(date(2026, 11, 26)) == []
    assert listed(date(2026, 12, 25)) == []
    assert listed(date(2026, 12, 26)) == [("DS-primer", "its review was due by 2026-12-25", True)]
    sheet, job = (history_of(desk.register, document).kept[-1].record for document in ("DS-primer", "MS-001"))
    name = min(job.snapshot.keys() - sheet.snapshot.keys())
    changed = reference_snapshot() | {name: "0" * 64, "content of table zinc": "0" * 64}
    told = f"published tables changed: {name}"
    assert listed(date(2026, 11, 26), changed) == [("MS-001", told, False)]
    desk.change("after repair.", "after any repair.")
    assert listed(date(2026, 11, 26)) == [("MS-001", "the sources say something else now", True)]
    desk.change("number: MS-001", "number: MS-002")
    assert listed(date(2026, 11, 26)) == [("MS-001", "the sources hold no job refit of this number any more", True)]


def test_a_frozen_model_is_that_of_its_revision(desk: Desk) -> None:
    _revise(desk, 0)
    desk.change("after repair.", "after any repair.")
    _revise(desk, 1)
    scopes = []
    for revision in ("A", "B"):
        spec = parse(frozen_sources(desk.register, "MS-001", revision)[0]).spec
        assert spec is not None
        scopes.append(spec.jobs["refit"].scope)
    assert scopes == ["Repainting of doors and steps after repair.", "Repainting of doors and steps after any repair."]
    with pytest.raises(RegisterError, match="there is no MS-001 C; there is: A, B"):
        frozen_sources(desk.register, "MS-001", "C")
    model = desk.register / "MS-001" / "0001" / "model.maker.json"
    model.write_bytes(model.read_bytes().replace(b"after repair", b"After repair"))
    with pytest.raises(RegisterError, match="was altered since it was issued"):
        frozen_sources(desk.register, "MS-001", "A")


@pytest.mark.parametrize("audience", list(Audience))
def test_a_zip_is_checked_by_common_tools(desk: Desk, tmp_path: Path, audience: Audience) -> None:
    _revise(desk, 0)
    kept = issued_revision(desk.register, "MS-001", "A")
    data = export(kept, audience, "Example Coatings")
    assert data == export(kept, audience, "Example Coatings")
    archive = zipfile.ZipFile(io.BytesIO(data))
    assert archive.testzip() is None
    archive.extractall(tmp_path / "out")
    folder = tmp_path / "out" / "MS-001-A"
    checked = subprocess.run(["sha256sum", "-c", "--strict", "SHA256SUMS"], cwd=folder, capture_output=True)
    assert checked.returncode == 0, checked.stderr
    assert "sha256sum -c SHA256SUMS" in (folder / "README.txt").read_text()
    names = {path.relative_to(folder).as_posix() for path in folder.rglob("*") if path.is_file()}
    if audience is Audience.CUSTOMER:
        assert names == {
            "README.txt",
            "SHA256SUMS",
            "certificate.json",
            "model.customer.json",
            "documents/MS-001-method-statement.pdf",
        }
        whole = b"".join((folder / name).read_bytes() for name in names)
        assert b"resin and pigment" not in whole
    else:
        assert names == {*kept.record.files, "README.txt", "SHA256SUMS", "record.json"}
    (kept.folder / "certificate.json").write_bytes(b"x")
    with pytest.raises(RegisterError, match=r"certificate.json of MS-001 A was altered"):
        export(kept, audience, "Example Coatings")
