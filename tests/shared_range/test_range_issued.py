"""What is issued on a shared range holds all of it that it rests on; each folder has its own register, and each sheet the register of its folder."""

from __future__ import annotations

import json
import shutil
from pathlib import Path

import pytest

from specgen.checking import check
from specgen.commands import main
from specgen.findings import Severity
from specgen.issuing.refused import Refused
from tests.good_spec import GOOD, ON
from tests.register.conftest import Desk
from tests.two_folders import RANGE, kept_in_git, two_folders

STEP = {"file": "sketch.svg", "id": "s", "caption": "Sketch", "alternative_text": "A sketch."}


@pytest.fixture
def yard(tmp_path: Path) -> Desk:
    return Desk(two_folders(tmp_path, of_range={"preparations.sand-steel.steps.sand.figures": [STEP]}))


def _run(*argv: str, capsys: pytest.CaptureFixture[str]) -> tuple[int, str, str]:
    code = main(list(argv))
    said = capsys.readouterr()
    return code, said.out, said.err


def test_a_revision_holds_every_record_and_needs_the_range_no_more(
    yard: Desk, tmp_path: Path, capsys: pytest.CaptureFixture[str], monkeypatch: pytest.MonkeyPatch
) -> None:
    issued = yard.revise()
    files = issued.kept.record.files
    assert {name for name in files if "sources" in name} == {
        "range_sources/project.yaml.txt",
        "range_sources/records.yaml.txt",
        "range_sources/sketch.svg",
        "sources/project.yaml.txt",
        "sources/records.yaml.txt",
    }
    model = json.loads((issued.kept.folder / "model.maker.json").read_text("utf-8"))
    assert set(model["products"]) >= {"primer", "base", "clear", "barrier"}
    assert model["project"]["maker"]["name"] == "Example Coatings"
    assert "range" not in json.loads((issued.kept.folder / "model.customer.json").read_text("utf-8"))["project"]
    copy = issued.kept.folder / "range_sources/records.yaml.txt"
    assert copy.read_bytes() == (tmp_path / "range/records.yaml").read_bytes()
    before = tmp_path / "before"
    shutil.copytree(tmp_path / "range", before)
    shutil.rmtree(tmp_path / "range")
    path = ("--path", str(yard.folder))
    assert _run("register", "verify", *path, capsys=capsys)[0] == 0
    assert _run("register", "as-of", "2026-12-31", *path, capsys=capsys)[1].startswith("MS-001 A  since 2026-11-25")
    pdf = next(one for one in issued.documents if one.suffix == ".pdf")
    assert _run("verify", str(pdf), "--register", str(yard.register), capsys=capsys)[0] == 0
    before.rename(tmp_path / "range")
    yard.change("coat_within: 4 h", "coat_within: 6 h", "../range/records.yaml")
    code, out, err = _run("compare", str(pdf), str(yard.folder), "--fail-on", "relaxed", capsys=capsys)
    assert (code, err) == (1, "")
    assert "from 4 h to 6 h" in out
    yard.change("coat_within: 6 h", "coat_within: 3 h", "../range/records.yaml")
    yard.revise(reason="the range has changed")
    shutil.rmtree(tmp_path / "range")
    monkeypatch.chdir(yard.folder)
    assert "from 4 h to 3 h" in _run("compare", "register:MS-001@A", "register:MS-001@B", capsys=capsys)[1]


def test_a_sheet_is_issued_where_its_product_stands(yard: Desk, tmp_path: Path) -> None:
    """A job rests on the sheet as it stands in the register of the range."""
    with pytest.raises(Refused, match=r"DS-primer is of the range \.\./range; approve and issue it there"):
        yard.approve("DS-primer")
    sheets = Desk(tmp_path / "range")
    sheets.revise("DS-primer")
    issued = yard.revise()
    rests_on = {one.document: one.revision for one in issued.kept.record.references}
    assert rests_on == {"DS-primer": "A", "DS-base": "", "DS-clear": "", "DS-barrier": ""}
    assert not (yard.register / "DS-primer").exists()


def test_a_newer_sheet_in_the_register_of_the_range_makes_the_job_due(
    yard: Desk, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    sheets = Desk(tmp_path / "range")
    for id in ("primer", "base", "clear", "barrier"):
        sheets.revise(f"DS-{id}")
    yard.revise()
    asked = ("register", "overdue", "--path", str(yard.folder), "--on", ON.isoformat())
    assert _run(*asked, capsys=capsys) == (0, "Nothing is overdue.\n", "")
    sheets.change("name: Example primer", "name: Other primer", "records.yaml")
    sheets.revise("DS-primer", reason="another name")
    code, out, _ = _run(*asked, capsys=capsys)
    assert code == 1
    assert "MS-001 A: it rests on DS-primer A: DS-primer B is in force since 2026-11-25" in out
    assert "DS-primer A" not in out.replace("rests on DS-primer A", "")


def test_a_register_kept_before_the_folder_was_parted_still_reads(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    """What was issued from one folder is in force after its products moved into a range: nothing of the content is another."""
    shutil.copytree(GOOD, tmp_path / "one")
    before = Desk(tmp_path / "one")
    before.revise()
    folder = two_folders(tmp_path)
    shutil.copytree(before.register, folder / "register")
    path = ("--path", str(folder))
    assert _run("register", "verify", *path, capsys=capsys)[0] == 0
    code, out, _ = _run("register", "overdue", *path, "--on", ON.isoformat(), capsys=capsys)
    assert (code, out) == (0, "Nothing is overdue.\n")


def test_an_approval_stays_good_when_the_folder_is_parted(tmp_path: Path) -> None:
    shutil.copytree(GOOD, tmp_path / "one")
    before = Desk(tmp_path / "one")
    before.approve()
    folder = two_folders(tmp_path)
    shutil.copytree(before.folder / "approvals", folder / "approvals")
    parted = Desk(folder)
    parted.minutes = 10
    assert parted.issue().kept.record.revision == "A"


def test_a_range_that_is_changed_meanwhile_stops_the_issue(yard: Desk, tmp_path: Path) -> None:
    from specgen.register.failure import RegisterError

    yard.approve()

    def step(name: str) -> None:
        if name == "print":
            yard.change("coat_within: 4 h", "coat_within: 6 h", "../range/records.yaml")

    with pytest.raises(RegisterError, match="the sources were changed while they were being issued"):
        yard.issue(step=step)
    assert not yard.register.exists()


def test_a_job_on_a_revision_of_the_range_is_issued_from_it(tmp_path: Path) -> None:
    desk = Desk(two_folders(tmp_path, of_range={"preparations.sand-steel.steps.sand.figures": [STEP]}))
    kept_in_git(tmp_path, "v1")
    copy = (tmp_path / "range/records.yaml").read_bytes()
    desk.change("coat_within: 4 h", "coat_within: 6 h", "../range/records.yaml")
    desk.change(RANGE, "range: git:v1:../range", "project.yaml")
    assert not [f for f in check(desk.folder, ON).report if f.severity is Severity.ERROR]
    issued = desk.revise()
    assert (issued.kept.folder / "range_sources/records.yaml.txt").read_bytes() == copy
    assert (issued.kept.folder / "range_sources/sketch.svg").is_file()


def test_where_used_reaches_over_both_folders(yard: Desk, tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    Desk(tmp_path / "range").revise("DS-primer")
    yard.revise()
    code, out, _ = _run("where-used", "primer", "--path", str(yard.folder), capsys=capsys)
    assert code == 0
    lines = out.splitlines()
    assert any(line.startswith("systems.cab  ") for line in lines)
    assert any(line.startswith("jobs.refit  ") for line in lines)
    assert lines[-2:] == ["register: MS-001 A  in force", "register of ../range: DS-primer A  in force"]


def test_a_record_of_the_range_that_nothing_uses_is_known(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    folder = two_folders(tmp_path, of_range={"products.spare": {"id": "spare", "name": "Spare"}})
    assert _run("where-used", "spare", "--path", str(folder), capsys=capsys)[:2] == (0, "Nothing uses spare.\n")


def test_documents_are_printed_where_their_record_stands(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    folder = two_folders(tmp_path)
    asked = ("render", str(folder), "--format", "html", "--format", "csv", "--out", str(tmp_path / "out"))
    assert _run(*asked, capsys=capsys)[0] == 0
    names = {path.name for path in (tmp_path / "out").iterdir()}
    assert "MS-001-method-statement.html" in names
    assert not {name for name in names if name.startswith(("DS-", "RO-"))}
    code, _, err = _run(*asked, "--product", "primer", capsys=capsys)
    assert (code, "the product primer stands in the range ../range; print it there" in err) == (1, True)


def test_revisions_of_both_folders_are_compared(
    tmp_path: Path, capsys: pytest.CaptureFixture[str], monkeypatch: pytest.MonkeyPatch
) -> None:
    """A side of git reads the range of its own revision, a folder on the disk that on the disk."""
    desk = Desk(two_folders(tmp_path))
    kept_in_git(tmp_path, "v1")
    desk.change("coat_within: 4 h", "coat_within: 6 h", "../range/records.yaml")
    kept_in_git(tmp_path, "v2")
    desk.change("coat_within: 6 h", "coat_within: 8 h", "../range/records.yaml")
    monkeypatch.chdir(tmp_path)
    out = _run("compare", "git:v1:yard", "git:v2:yard", capsys=capsys)[1]
    assert "from 4 h to 6 h" in out
    assert "old v1:range/records.yaml:" in out
    assert "from 6 h to 8 h" in _run("compare", "git:v2:yard", "yard", capsys=capsys)[1]
    desk.change(RANGE, "range: git:v1:../range", "project.yaml")
    assert "from 6 h to 4 h" in _run("compare", "git:v2:yard", "yard", capsys=capsys)[1]


def test_a_range_outside_the_repository_is_told(
    tmp_path: Path, capsys: pytest.CaptureFixture[str], monkeypatch: pytest.MonkeyPatch
) -> None:
    folder = two_folders(tmp_path)
    kept_in_git(folder, "v1")
    monkeypatch.chdir(folder)
    code, out, _ = _run("compare", "git:v1:", ".", capsys=capsys)
    assert code == 2
    assert "error RNG001 the range ../range cannot be read: the path ../range leads out of the repository" in out
