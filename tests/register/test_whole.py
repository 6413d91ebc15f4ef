"""Is the register whole? Every byte of what it keeps, every way to take something out or put something in."""

from __future__ import annotations

import dataclasses
import json
import random
import shutil
import subprocess
from collections.abc import Callable
from pathlib import Path

import pytest

from specgen.register.chain import all_faults, left_behind
from specgen.register.failure import RegisterError
from specgen.register.folder import histories, history_of
from specgen.register.history import Kept, link_faults
from specgen.register.issued_file import judged
from specgen.register.notes import withdraw
from specgen.register.receipt import beyond, lost_since, receipt_text
from tests.register.conftest import Desk

SMALL = (
    "record.json",
    "SHA256SUMS",
    "certificate.json",
    "approvals/approve-ada-quill.json",
    "sources/project.yaml.txt",
)


@pytest.fixture(scope="module")
def kept(tmp_path_factory: pytest.TempPathFactory) -> Desk:
    """A document with two revisions."""
    from tests.good_spec import GOOD

    folder = tmp_path_factory.mktemp("kept") / "specs"
    shutil.copytree(GOOD, folder)
    desk = Desk(folder)
    desk.revise()
    desk.revise(reason="second")
    return desk


def _faults(register: Path) -> list[str]:
    return [fault for found in histories(register) for fault in all_faults(found)]


def test_a_sound_register_has_no_fault(kept: Desk) -> None:
    assert _faults(kept.register) == []


@pytest.mark.parametrize("name", SMALL)
@pytest.mark.parametrize("number", ["0001", "0002"])
def test_every_byte_flipped_is_found(kept: Desk, number: str, name: str) -> None:
    """Every byte of the small files of the newest record and of the one before, each bit pattern another one."""
    path = kept.register / "MS-001" / number / name
    data = path.read_bytes()
    steps = range(len(data))
    flip = random.Random(name)
    try:
        for at in steps if len(data) < 700 else sorted(flip.sample(steps, 200)):
            path.write_bytes(data[:at] + bytes([data[at] ^ (1 << flip.randrange(8))]) + data[at + 1 :])
            assert _faults(kept.register) != [], at
    finally:
        path.write_bytes(data)
    assert _faults(kept.register) == []


@pytest.mark.parametrize("name", ["record.json", "model.maker.json", "model.customer.json", "certificate.json"])
def test_every_byte_of_record_and_model_is_covered_by_a_hash(kept: Desk, name: str) -> None:
    """All bytes, not a sample: each flip gives another SHA-256 than the one the register holds, so `all_faults` sees it (above)."""
    from specgen.register.json_text import sha256

    record = history_of(kept.register, "MS-001").kept[-1]
    data = (record.folder / name).read_bytes()
    known = record.sha256 if name == "record.json" else record.record.files[name][0]
    assert sha256(data) == known
    for at in range(len(data)):
        assert sha256(data[:at] + bytes([data[at] ^ 1]) + data[at + 1 :]) != known


def test_any_offset_of_a_pdf_flipped_is_found(kept: Desk, monkeypatch: pytest.MonkeyPatch) -> None:
    """2,000 random offsets; the verdict is never that the file is unaltered, and always one of the known words."""
    record = history_of(kept.register, "MS-001").kept[-1]
    data = (record.folder / "documents" / "MS-001-method-statement.pdf").read_bytes()
    register = histories(kept.register)
    assert judged(data, register).word == "unaltered and current"
    # a process of its own for each of so many files would take a minute
    monkeypatch.setattr("multiprocessing.get_all_start_methods", list)
    flip = random.Random(7)
    words = set()
    for _ in range(2000):
        at = flip.randrange(len(data))
        verdict = judged(data[:at] + bytes([data[at] ^ (1 << flip.randrange(8))]) + data[at + 1 :], register)
        assert not verdict.good
        words.add(verdict.word)
    assert words <= {"altered", "unknown here"}
    assert "altered" in words


def _remove(path: Path) -> None:
    shutil.rmtree(path) if path.is_dir() else path.unlink()


def _link(path: Path) -> None:
    moved = path.rename(path.with_name(path.name + ".moved"))
    path.symlink_to(moved)


CASES: dict[str, tuple[Callable[[Path], object], str]] = {
    "first record gone": (lambda d: _remove(d / "0001"), "MS-001/0002: record 1 is missing before it"),
    "record file gone": (lambda d: _remove(d / "0001" / "record.json"), "record.json cannot be read"),
    "document gone": (lambda d: _remove(d / "0002" / "documents"), "documents/MS-001-method-statement.pdf is missing"),
    "sums gone": (lambda d: _remove(d / "0002" / "SHA256SUMS"), "SHA256SUMS is missing"),
    "file added": (lambda d: (d / "0002" / "note.txt").write_text("x"), "MS-001/0002/note.txt belongs to no record"),
    "hidden file added": (lambda d: (d / "0002" / ".x").write_text("x"), "MS-001/0002/.x belongs to no record"),
    "link for a file": (lambda d: _link(d / "0002" / "certificate.json"), "certificate.json is a link"),
    "link for a record": (lambda d: _link(d / "0002"), "is no record's folder"),
    "empty record": (lambda d: (d / "0003").mkdir(), "MS-001/0003/record.json cannot be read"),
    "copy of a record": (lambda d: shutil.copytree(d / "0002", d / "0003"), "MS-001/0003 holds the record 2"),
    "records exchanged": (
        lambda d: ((d / "0001").rename(d / "x"), (d / "0002").rename(d / "0001"), (d / "x").rename(d / "0002")),
        "MS-001/0001 holds the record 2",
    ),
    "stranger": (lambda d: (d / "notes").mkdir(), "MS-001/notes is no record's folder"),
    "file for a folder": (lambda d: (d.parent / "MS-002").write_text("x"), "MS-002 is no folder of a document"),
    "another document": (lambda d: d.rename(d.parent / "MS-009"), "MS-009/0001 is a record of MS-001"),
    "huge record": (lambda d: (d / "0002" / "record.json").write_bytes(b" " * (65 * 1024 * 1024)), "is larger than"),
    "other encoding": (
        lambda d: (d / "0002" / "record.json").write_bytes((d / "0002" / "record.json").read_text().encode("utf-16")),
        "is not UTF-8 text",
    ),
}


@pytest.mark.parametrize("case", CASES)
def test_what_was_taken_out_or_put_in_is_found(kept: Desk, tmp_path: Path, case: str) -> None:
    register = tmp_path / "register"
    shutil.copytree(kept.register, register)
    harm, says = CASES[case]
    harm(register / "MS-001")
    found = _faults(register)
    assert any(says in fault for fault in found), found


@pytest.mark.parametrize(
    "name", ["../../outside.txt", "/etc/passwd", "documents/../../../x", ".hidden", "a\\b", "documents//x"]
)
def test_a_record_that_names_a_file_outside_is_none(kept: Desk, tmp_path: Path, name: str) -> None:
    from specgen.register.json_text import written

    register = tmp_path / "register"
    shutil.copytree(kept.register, register)
    path = register / "MS-001" / "0002" / "record.json"
    value = json.loads(path.read_text())
    value["files"][name] = {"bytes": 1, "sha256": "0" * 64}
    path.write_bytes(written(value))
    assert "MS-001/0002/record.json names a file outside its folder" in _faults(register)


@pytest.mark.parametrize(("field", "value"), [("approved", "yes"), ("record", "2")])
def test_a_record_of_another_make_is_none(kept: Desk, tmp_path: Path, field: str, value: str) -> None:
    from specgen.register.json_text import written

    register = tmp_path / "register"
    shutil.copytree(kept.register, register)
    path = register / "MS-001" / "0002" / "record.json"
    path.write_bytes(written(json.loads(path.read_text()) | {field: value}))
    assert "MS-001/0002/record.json holds something this program does not know" in _faults(register)


def test_a_note_on_a_revision_that_was_never_issued_is_told(kept: Desk) -> None:
    records = history_of(kept.register, "MS-001").kept
    assert list(link_faults("MS-001", records)) == []
    issued, last = records[-1].record.revision, records[-1]
    for revision, expected in ((issued, []), ("Z", ["MS-001/0003 speaks of the revision Z, which was never issued"])):
        record = dataclasses.replace(last.record, kind="withdrawal", number=3, revision=revision, previous=last.sha256)
        note = Kept(record, last.folder.with_name("0003"), "0" * 64)
        assert list(link_faults("MS-001", (*records, note))) == expected


def test_the_newest_record_lost_leaves_no_trace_but_by_a_receipt(kept: Desk, tmp_path: Path) -> None:
    register = tmp_path / "register"
    shutil.copytree(kept.register, register)
    receipt = receipt_text(histories(register))
    assert list(lost_since(receipt, histories(register))) == []
    shutil.rmtree(register / "MS-001" / "0002")
    assert _faults(register) == []
    (lost,) = lost_since(receipt, histories(register))
    assert lost.startswith("record 2 of MS-001 (B, 2026-11-25T")
    assert lost.endswith("is gone; the receipt knows it")
    withdraw(register, "MS-001", "A", reason="wrong", by="Ada Quill", now=kept.now())
    (lost,) = lost_since(receipt, histories(register))
    assert lost.endswith("is not the one the receipt knows")
    shutil.rmtree(register / "MS-001")
    assert len(list(lost_since(receipt, histories(register)))) == 1
    for data in (b"", b"{}\n", b'{\n "documents": {},\n "receipt": "1",\n "x": ""\n}\n'):
        with pytest.raises(RegisterError, match="receipt"):
            list(lost_since(data, []))


def test_a_receipt_says_what_it_is_too_old_to_vouch_for(desk: Desk) -> None:
    desk.revise()
    old = receipt_text(histories(desk.register))
    assert list(beyond(old, histories(desk.register))) == []
    desk.revise()
    desk.revise("DS-primer")
    assert list(beyond(old, histories(desk.register))) == [
        "the receipt does not know DS-primer: a record taken out of it since would not show",
        "the receipt knows MS-001 up to record 1 (2026-11-25T09:02:00Z): a later record taken out since would not show",
    ]


def _without_approval(folder: Path) -> None:
    for path in (folder / "approvals").glob("*"):
        path.unlink()


def _other_meaning(folder: Path) -> None:
    path = folder / "approvals/approve-ada-quill.json"
    path.write_text(path.read_text().replace("May be used.", "May be used!"))


@pytest.mark.parametrize("harm", [_without_approval, _other_meaning])
def test_approvals_beside_a_certificate_are_those_it_carries(
    kept: Desk, tmp_path: Path, harm: Callable[[Path], None]
) -> None:
    """Record and sums made to fit the change: only the comparison with the certificate can find it."""
    from specgen.register.folder import sums_text
    from specgen.register.json_text import sha256, written

    register = tmp_path / "register"
    shutil.copytree(kept.register, register)
    folder = register / "MS-001" / "0002"
    harm(folder)
    files = sorted(p for p in folder.rglob("*") if p.is_file() and p.name not in ("record.json", "SHA256SUMS"))
    data = {str(p.relative_to(folder)): p.read_bytes() for p in files}
    value = json.loads((folder / "record.json").read_text())
    value["files"] = {name: {"sha256": sha256(held), "bytes": len(held)} for name, held in data.items()}
    (folder / "record.json").write_bytes(written(value))
    data["record.json"] = (folder / "record.json").read_bytes()
    (folder / "SHA256SUMS").write_bytes(sums_text({name: sha256(held) for name, held in data.items()}))
    assert _faults(register) == ["MS-001/0002: the approvals and the certificate differ"]


def test_what_a_cut_off_issuing_left_is_no_part_of_the_register(kept: Desk, tmp_path: Path) -> None:
    register = tmp_path / "register"
    shutil.copytree(kept.register, register)
    shutil.copytree(register / "MS-001" / "0002", register / "MS-001" / ".0003.abcdef.stage")
    assert _faults(register) == []
    assert left_behind(register) == ["MS-001/.0003.abcdef.stage"]


def test_two_branches_that_issue_the_same_revision_meet_in_git(desk: Desk) -> None:
    """git as the outside judge: one document conflicts, two do not, and a withdrawal meets an issue."""

    def git(*arguments: str) -> subprocess.CompletedProcess[str]:
        who = ("-c", "user.name=t", "-c", "user.email=t@example.org", "-c", "commit.gpgsign=false")
        return subprocess.run(["git", *who, *arguments], cwd=desk.folder, capture_output=True, text=True)

    def commit(branch: str) -> None:
        git("add", "-A")
        assert git("commit", "-q", "-m", branch).returncode == 0

    git("init", "-q", "-b", "main")
    desk.revise("DS-primer")
    commit("first")
    for branch, add in {
        "issue": lambda: desk.revise("DS-primer", reason="by one"),
        "again": lambda: desk.revise("DS-primer", reason="by another"),
        "withdraw": lambda: withdraw(desk.register, "DS-primer", "A", reason="r", by="b", now=desk.now()),
        "other": lambda: desk.revise("DS-base"),
    }.items():
        git("checkout", "-q", "-b", branch, "main")
        add()
        commit(branch)
    for ours, theirs, meets in (("issue", "again", True), ("issue", "withdraw", True), ("issue", "other", False)):
        git("checkout", "-q", ours)
        merged = git("merge", "-q", "-m", "merged", theirs)
        assert (merged.returncode != 0) == meets, (ours, theirs, merged.stdout)
        if meets:
            assert "register/DS-primer/0002/record.json" in git("diff", "--name-only", "--diff-filter=U").stdout
            git("merge", "--abort")
    assert _faults(desk.register) == []


def test_numbers_that_would_share_a_folder_are_refused(desk: Desk) -> None:
    desk.revise("MS-001")
    for number in ("MS/001", "ms-001"):
        desk.change("number: MS-001", f"number: {number}")
        with pytest.raises(RegisterError, match="MS-001 has the folder it would need"):
            desk.approve(number)
        desk.change(f"number: {number}", "number: MS-001")


def test_a_hidden_folder_beside_the_documents_is_no_document(kept: Desk, tmp_path: Path) -> None:
    """A register under version control, or on a disk that keeps a bin of its own."""
    register = tmp_path / "register"
    shutil.copytree(kept.register, register)
    (register / ".git").mkdir()
    assert [one.document for one in histories(register)] == [one.document for one in histories(kept.register)]
    assert _faults(register) == _faults(kept.register)
