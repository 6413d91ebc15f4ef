"""Approvals: bound to content, void after a change, not by the preparer, not twice by one person, signatures by OpenSSH."""

from __future__ import annotations

import json
import multiprocessing
import shutil
import subprocess
from pathlib import Path
from typing import Any

import pytest

from specgen.issuing.refused import Refused
from specgen.register.approvals import approval_file
from specgen.register.failure import RegisterError
from specgen.register.folder import histories
from specgen.register.signatures import NAMESPACE
from tests.register.conftest import Desk


def _lines(desk: Desk) -> tuple[str, ...]:
    with pytest.raises(Refused) as refused:
        desk.issue()
    return refused.value.lines


def _key(folder: Path, name: str) -> Path:
    path = folder / name
    subprocess.run(["ssh-keygen", "-q", "-t", "ed25519", "-N", "", "-C", name, "-f", str(path)], check=True)
    return path


def _sign(key: Path, file: Path, namespace: str = NAMESPACE) -> Path:
    subprocess.run(
        ["ssh-keygen", "-q", "-Y", "sign", "-n", namespace, "-f", str(key), str(file)], check=True, capture_output=True
    )
    return file.with_name(file.name + ".sig")


def _allow(desk: Desk, *signers: tuple[str, Path]) -> None:
    lines = [f"{who} {key.with_suffix('.pub').read_text()}" for who, key in signers]
    (desk.folder / "allowed_signers").write_text("".join(lines))


def test_an_approval_holds_the_fields_of_a_signature(desk: Desk) -> None:
    done = desk.approve(name="Ada Quill", meaning="May be used on the doors.")
    assert done.path == desk.folder / "approvals" / "MS-001" / "approve-ada-quill.json"
    held = json.loads(done.path.read_text())
    digest = held.pop("digest")
    assert len(digest) == 64
    # printed name, date and time, meaning: 21 CFR 11.50 (a)
    assert held == {
        "approval": "1",
        "document": "MS-001",
        "revision": "A",
        "role": "approve",
        "name": "Ada Quill",
        "meaning": "May be used on the doors.",
        "time": "2026-11-25T09:01:00Z",
    }


def test_nothing_is_issued_without_an_approval(desk: Desk) -> None:
    assert _lines(desk) == ("1 person has to check or approve, 0 did", "nobody has approved it")


@pytest.mark.parametrize(
    ("old", "new", "file"),
    [
        ("after repair.", "after a repair.", "job.yaml"),
        ("resin and pigment", "resin and pigments", "products.yaml"),
        ("customer: {name: Example Yard}", "customer: {name: Example Yards}", "project.yaml"),
    ],
)
def test_any_change_of_content_voids_it(desk: Desk, old: str, new: str, file: str) -> None:
    desk.approve()
    desk.change(old, new, file)
    assert _lines(desk)[-1] == "approve-ada-quill.json is void: the content was changed after it was given"
    desk.change(new, old, file)
    assert desk.issue().kept.record.revision == "A"


def test_a_change_that_says_nothing_else_leaves_it(desk: Desk) -> None:
    desk.approve()
    path = desk.folder / "job.yaml"
    path.write_text("# a comment\n\n" + path.read_text())
    assert desk.issue().kept.record.revision == "A"


def test_an_approval_is_good_for_one_revision(desk: Desk) -> None:
    desk.approve()
    desk.issue()
    assert "nobody has approved it" in _lines(desk)


@pytest.mark.parametrize("name", ["Technical desk", "technical  DESK"])
def test_whoever_prepared_it_does_not_approve_it(desk: Desk, name: str) -> None:
    with pytest.raises(Refused, match="prepared the document and cannot approve it"):
        desk.approve(name=name)
    assert not (desk.folder / "approvals").exists()


def test_the_preparer_is_named_where_the_owner_is_a_desk(desk: Desk) -> None:
    desk.change("owner: Technical desk}", "owner: Technical desk, prepared_by: Ada Quill}")
    with pytest.raises(Refused, match="Ada Quill prepared the document"):
        desk.approve()
    desk.approve(name="Bo Reed")


def test_nobody_both_checks_and_approves(desk: Desk) -> None:
    desk.approve(role="check")
    with pytest.raises(Refused, match="ada quill cannot both check and approve"):
        desk.approve(name="ada quill")


def test_a_copied_file_does_not_make_a_second_person(desk: Desk) -> None:
    """The rules hold at issue too, whatever was put into the folder by hand."""
    done = desk.approve()
    held = json.loads(done.path.read_text()) | {"role": "check"}
    done.path.with_name("check-other.json").write_text(json.dumps(held, sort_keys=True, indent=1) + "\n")
    assert _lines(desk) == ("Ada Quill cannot both check and approve",)


def test_the_policy_asks_by_role_and_for_signatures(desk: Desk, tmp_path: Path) -> None:
    with (desk.folder / "project.yaml").open("a") as out:
        out.write(
            "  policies:\n    approvals_needed: 2\n    approvals:\n"
            "      - {id: technical, role: check, count: 1}\n      - {id: release, role: approve, signed: yes}\n"
        )
    desk.approve()
    assert _lines(desk) == (
        "2 persons have to check or approve, 1 did",
        "technical: 1 check required, 0 given",
        "release: 1 approval with a signature required, 0 given",
    )
    desk.approve(role="check", name="Bo Reed", meaning="Checked.")
    assert _lines(desk) == ("release: 1 approval with a signature required, 0 given",)
    key = _key(tmp_path, "ada")
    _allow(desk, ("ada@example.org", key))
    _sign(key, desk.folder / "approvals" / "MS-001" / "approve-ada-quill.json")
    assert desk.issue().kept.record.revision == "A"


def test_a_signature_is_checked_and_kept(desk: Desk, tmp_path: Path) -> None:
    done, key = desk.approve(), _key(tmp_path, "ada")
    _allow(desk, ("ada@example.org", key))
    _sign(key, done.path)
    folder = desk.issue().kept.folder / "approvals"
    # the outside verifier, on what the register keeps
    checked = subprocess.run(
        [
            *("ssh-keygen", "-Y", "verify", "-f", str(folder / "allowed_signers"), "-I", "ada@example.org"),
            *("-n", NAMESPACE, "-s", str(folder / "approve-ada-quill.json.sig")),
        ],
        input=(folder / "approve-ada-quill.json").read_bytes(),
        capture_output=True,
    )
    assert checked.returncode == 0, checked.stderr


@pytest.mark.parametrize("fault", ["another key", "another text", "another purpose", "rubbish", "no list"])
def test_a_bad_signature_is_refused(desk: Desk, tmp_path: Path, fault: str) -> None:
    done, key, foreign = desk.approve(), _key(tmp_path, "ada"), _key(tmp_path, "eve")
    _allow(desk, ("ada@example.org", key))
    if fault == "another text":
        other = tmp_path / "other"
        other.write_text("other")
        _sign(key, other).rename(done.path.with_name(done.path.name + ".sig"))
    elif fault == "rubbish":
        done.path.with_name(done.path.name + ".sig").write_bytes(b"\x00rubbish")
    else:
        _sign(
            foreign if fault == "another key" else key, done.path, "other" if fault == "another purpose" else NAMESPACE
        )
    if fault == "no list":
        (desk.folder / "allowed_signers").unlink()
    with pytest.raises(RegisterError, match="allowed_signers file|none of the signers allowed|does not fit its text"):
        desk.issue()
    assert not desk.register.exists()


def test_one_key_does_not_sign_for_two_names(desk: Desk, tmp_path: Path) -> None:
    key = _key(tmp_path, "ada")
    _allow(desk, ("ada@example.org", key))
    _sign(key, desk.approve().path)
    _sign(key, desk.approve(role="check", name="Bo Reed").path)
    assert _lines(desk) == (
        "check-bo-reed.json is in the name of Bo Reed and signed with the key of ada@example.org; whoever is named has to "
        "sign, and allowed_signers has to name that person, as in ada.quill@example.org",
        "the key of ada@example.org signed for two names",
    )


def test_a_key_of_somebody_else_signs_for_nobody(desk: Desk, tmp_path: Path) -> None:
    key = _key(tmp_path, "eve")
    _allow(desk, ("eve@example.org", key))
    _sign(key, desk.approve().path)
    assert [line.partition(";")[0] for line in _lines(desk)] == [
        "approve-ada-quill.json is in the name of Ada Quill and signed with the key of eve@example.org"
    ]


@pytest.mark.parametrize(
    ("until", "issued"), [("20261125", False), ("20261125090030", False), ("20261125090200", True), ("20261201", True)]
)
def test_a_key_is_judged_by_the_time_of_the_approval(desk: Desk, tmp_path: Path, until: str, issued: bool) -> None:
    """Given at 09:01 UTC and issued later: what the key was worth at 09:01 counts, whatever the clock of the machine says."""
    done, key = desk.approve(), _key(tmp_path, "ada")
    line = key.with_suffix(".pub").read_text()
    (desk.folder / "allowed_signers").write_text(f'ada@example.org valid-before="{until}" {line}')
    _sign(key, done.path)
    if issued:
        assert desk.issue().kept.record.revision == "A"
    else:
        with pytest.raises(RegisterError, match="none of the signers allowed at its time"):
            desk.issue()


@pytest.mark.parametrize(
    "name",
    [
        "ada quill", "Quill, Ada", "Dr. Ada Quill", "Ada Quill (QA)", "Ada-Quill", "Аdа Quill", "Ada Quіll", "Ａｄａ Ｑｕｉｌｌ",
        "Áda Quill", "A\u0301da Quill", "Ada QuiIl", "ADA QUILL",
    ],
)  # fmt: skip
def test_one_person_under_another_spelling_is_one_person(desk: Desk, name: str) -> None:
    """Letters that look alike by Unicode Technical Standard 39; titles, brackets and order by common practice, no source."""
    desk.approve(role="check", name="Ada Quill")
    with pytest.raises(Refused, match="cannot both check and approve"):
        desk.approve(name=name)


@pytest.mark.parametrize("name", ["Ada Quist", "Bo Quill", "Ada B. Quill", "Quill", "Ида Quill"])
def test_another_person_is_another_person(desk: Desk, name: str) -> None:
    desk.approve(role="check", name="Ada Quill")
    desk.approve(name=name)


def test_two_names_never_meet_in_one_file(desk: Desk) -> None:
    names = [
        "Ada Quill",
        "Ada.Quill",
        "Ada-Quill",
        "Áda Quill",
        "李雷",
        "韩梅梅",
        "A" * 59 + " Quill",
        "A" * 59 + " Quist",
        "-Ada Quill-",
    ]
    assert len({approval_file("approve", name) for name in names}) == len(names)


def test_two_who_approve_at_once_share_one_salt(desk: Desk, tmp_path: Path) -> None:
    """Each in a process of its own, from one moment on; twelve rounds, for one would often go well by chance."""
    for at in range(12):
        folder = tmp_path / f"round-{at}"
        shutil.copytree(desk.folder, folder)
        ready = multiprocessing.get_context("fork").Barrier(2)

        def give(role: str, name: str, folder: Path = folder, ready: Any = ready) -> None:
            ready.wait()
            Desk(folder).approve(role=role, name=name)

        given = [("check", "Bo Reed"), ("approve", "Ada Quill")]
        people = [multiprocessing.get_context("fork").Process(target=give, args=one) for one in given]
        for one in people:
            one.start()
        for one in people:
            one.join()
        assert [one.exitcode for one in people] == [0, 0]
        assert len(list((folder / "approvals/MS-001").glob("salt-*.json"))) == 1
        after = Desk(folder)
        after.minutes = 5
        assert len(list((after.issue().kept.folder / "approvals").glob("*.json"))) == 2


@pytest.mark.parametrize(
    ("old", "new", "says"),
    [
        ("Ada Quill", "Ada \u202equill", "U\\+202E"),
        ("2026-11-25T09:01:00Z", "2026-11-31T09:01:00Z", "a time that is none"),
        ("2026-11-25T09:01:00Z", "2026-11-25T24:01:00Z", "a time that is none"),
    ],
)
def test_an_approval_edited_by_hand_is_read_strictly(desk: Desk, old: str, new: str, says: str) -> None:
    path = desk.approve().path
    path.write_text(path.read_text("utf-8").replace(old, new), "utf-8")
    with pytest.raises(RegisterError, match=says):
        desk.issue()


def test_an_approval_of_the_future_is_none(desk: Desk) -> None:
    path = desk.approve().path
    path.write_text(path.read_text("utf-8").replace("2026-11-25", "2099-11-25"), "utf-8")
    assert _lines(desk) == (
        "approve-ada-quill.json is of 2099-11-25T09:01:00Z, after this moment; approve again, or set the clock",
    )


def test_an_approval_whose_file_no_register_can_keep_is_named(desk: Desk) -> None:
    path = desk.approve().path
    path.rename(path.with_name("approve: ada.json"))
    with pytest.raises(RegisterError, match="approve: ada.json in approvals has a name no register can keep"):
        desk.issue()


@pytest.mark.parametrize(
    ("data", "says"),
    [
        (b"{}", "not as the register writes it"),
        (b"\xff", "is not UTF-8"),
        (b'{\n "approval": "1"\n}\n', "is not an approval"),
        (b"x" * 70_000, "is larger than"),
    ],
)
def test_a_damaged_approval_is_named_and_nothing_is_issued(desk: Desk, data: bytes, says: str) -> None:
    desk.approve()
    (desk.folder / "approvals" / "MS-001" / "check-x.json").write_bytes(data)
    with pytest.raises(RegisterError, match=says):
        desk.issue()


def test_an_approval_is_not_read_through_a_link(desk: Desk) -> None:
    done = desk.approve()
    kept = done.path.rename(desk.folder / "elsewhere.json")
    done.path.symlink_to(kept)
    with pytest.raises(RegisterError, match="is not an ordinary file"):
        desk.issue()


@pytest.mark.parametrize(
    "document", ["../../etc", "/etc/passwd", "..", "", "MS-001/../../x", "NO-1", "a" * 500, "MS-001\x00"]
)
def test_a_document_that_is_not_there_leads_nowhere(desk: Desk, tmp_path: Path, document: str) -> None:
    with pytest.raises(RegisterError):
        desk.approve(document)
    with pytest.raises(RegisterError):
        desk.issue(document)
    assert sorted(path.name for path in tmp_path.iterdir()) == ["specs"]
    assert sorted(path.name for path in desk.folder.iterdir()) == [
        "job.yaml",
        "products.yaml",
        "project.yaml",
        "sketch.svg",
    ]


def test_what_does_not_check_is_not_approved(desk: Desk) -> None:
    desk.change("min: 40 um, nominal: 60 um, max: 80 um", "min: 40 um, nominal: 60 um, max: 300 um")
    with pytest.raises(Refused) as refused:
        desk.approve()
    assert any("error FLM003" in line for line in refused.value.lines)


def test_an_open_warning_of_another_document_does_not_stop_it(desk: Desk) -> None:
    """The barrier is no part of what the data sheet of the primer reaches."""
    desk.change(
        "film: {min: 60 um, nominal: 80 um, max: 120 um}, coats: 1",
        "film: {min: 10 um, nominal: 80 um, max: 900 um}, coats: 1",
    )
    with pytest.raises(Refused):
        desk.approve("MS-001")
    desk.approve("DS-primer")
    assert desk.issue("DS-primer").kept.record.revision == "A"
    assert [one.document for one in histories(desk.register)] == ["DS-primer"]
