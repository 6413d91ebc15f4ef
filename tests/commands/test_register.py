"""`specgen approve`, `issue`, `verify` and `register` on the command line: exit codes, one plain line, and that reading writes nothing."""

from __future__ import annotations

import os
import shutil
import zipfile
from collections.abc import Callable, Iterator
from datetime import UTC, datetime, timedelta
from pathlib import Path

import pytest

import specgen
from specgen.commands import main
from specgen.issuing.issue import issue as _issue
from specgen.register.pdf_attachments import attachments
from tests.good_spec import GOOD
from tests.register.conftest import no_versions, small_pdf

Said = tuple[int, str, str]


@pytest.fixture
def moments() -> Iterator[datetime]:
    """What the clock says, each time it is asked: it goes on by a minute."""
    return iter(datetime(2026, 11, 25, 9, 0, tzinfo=UTC) + timedelta(minutes=n) for n in range(1000))


@pytest.fixture
def folder(tmp_path: Path, monkeypatch: pytest.MonkeyPatch, moments: Iterator[datetime]) -> Path:
    """A folder of sources as the current folder; pages are not set."""
    shutil.copytree(GOOD, tmp_path / "specs")
    monkeypatch.chdir(tmp_path / "specs")
    for module in ("approve", "issue", "register_entries"):
        monkeypatch.setattr(f"specgen.commands.{module}.now", lambda: next(moments))
    for module in ("approve", "issue", "register_reports"):
        monkeypatch.setattr(f"specgen.commands.{module}.today", lambda: datetime(2026, 11, 25, tzinfo=UTC).date())

    def issue(*given: object, **named: object) -> object:
        return _issue(*given, **named, printer=small_pdf, versions=no_versions)

    monkeypatch.setattr("specgen.issuing.issue.issue", issue)
    return tmp_path / "specs"


@pytest.fixture
def say(capsys: pytest.CaptureFixture[str]) -> Callable[..., Said]:
    def run(*argv: str) -> Said:
        code = main(list(argv))
        out, err = capsys.readouterr()
        assert "Traceback" not in err
        assert "internal fault" not in err
        return code, out, err

    return run


@pytest.fixture(scope="module")
def kept(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """Where `issued` keeps what the commands wrote."""
    return tmp_path_factory.mktemp("kept")


@pytest.fixture
def issued(folder: Path, say: Callable[..., Said], moments: Iterator[datetime], kept: Path) -> Callable[[int], None]:
    """The document approved and issued so many times. The commands write it once; later tests get a copy of the same bytes."""

    def lay_down(times: int) -> None:
        whole = kept / str(times)
        if whole.exists():
            shutil.copytree(whole, folder, dirs_exist_ok=True)
            for _ in range(2 * times):
                next(moments)
        else:
            for _ in range(times):
                assert [say(*APPROVE)[0], say(*ISSUE)[0]] == [0, 0]
            shutil.copytree(folder, whole)

    return lay_down


APPROVE = ("approve", "MS-001", "--role", "approve", "--name", "Ada Quill", "--meaning", "May be used.")
ISSUE = ("issue", "MS-001", "--reason", "first issue")
ON = ("--on", "2026-11-25")
PDF = "register/MS-001/0001/documents/MS-001-method-statement.pdf"


def test_the_way_of_a_document(folder: Path, say: Callable[..., Said], tmp_path: Path) -> None:
    assert say(*ISSUE) == (
        1,
        "",
        "specgen: 1 person has to check or approve, 0 did\nspecgen: nobody has approved it\nspecgen: nothing was issued\n",
    )
    code, out, err = say(*APPROVE)
    assert (code, err) == (0, "")
    assert out.splitlines() == [
        "approve of MS-001 A by Ada Quill recorded in approvals/MS-001/approve-ada-quill.json; it is not signed.",
        "To sign it: ssh-keygen -Y sign -n specgen-approval -f ~/.ssh/id_ed25519 approvals/MS-001/approve-ada-quill.json",
    ]
    code, out, err = say(*ISSUE)
    assert (code, err) == (0, "")
    assert out.startswith(f"{PDF}\nMS-001 A issued 2026-11-25T09:")
    assert say("register", "list") == (0, "MS-001 A  2026-11-25  in force  Door and step\n", "")
    assert say("verify", PDF, "--register", "register") == (
        0,
        "MS-001 A of 2026-11-25, MS-001-method-statement.pdf: unaltered and current.\n",
        "",
    )
    assert say("verify", PDF)[0] == 0
    assert say("register", "receipt", str(tmp_path / "receipt.json"))[0] == 0
    assert say("register", "export", "MS-001@A", "--out", str(tmp_path / "a.zip"))[0] == 0
    assert (tmp_path / "a.zip").read_bytes()[:2] == b"PK"
    assert say("register", "overdue") == (0, "Nothing is overdue.\n", "")
    assert say("register", "as-of", "2026-11-24") == (0, "Nothing was in force on 2026-11-24.\n", "")
    assert say("register", "as-of", "2026-11-25")[1] == "MS-001 A  since 2026-11-25  Door and step\n"
    assert "rests on DS-primer (not issued)" in say("register", "show", "MS-001@A")[1]
    code, out, _ = say("register", "withdraw", "MS-001@A", "--reason", "film too thin", "--by", "Ada Quill")
    assert (code, out.startswith("MS-001 A withdrawn 2026-11-25T09:")) == (0, True)
    code, out, _ = say("verify", PDF, "--register", "register")
    assert (code, "withdrawn on 2026-11-25 by Ada Quill: film too thin" in out) == (1, True)
    assert say("register", "verify", "--receipt", str(tmp_path / "receipt.json")) == (
        0,
        "the receipt knows MS-001 up to record 1 (2026-11-25T09:02:00Z): a later record taken out since would not show\n"
        "2 records of 1 document, all whole; against the receipt too.\n",
        "",
    )
    shutil.rmtree(folder / "register" / "MS-001" / "0002")
    shutil.rmtree(folder / "register" / "MS-001" / "0001")
    code, out, _ = say("register", "verify", "--receipt", str(tmp_path / "receipt.json"))
    assert (code, "is gone; the receipt knows it" in out) == (1, True)


def test_reading_writes_nothing(folder: Path, say: Callable[..., Said]) -> None:
    say(*APPROVE)
    say(*ISSUE)
    before = {path: path.stat().st_mtime_ns for path in folder.rglob("*")}
    for path in (folder, *before):
        path.chmod(0o555 if path.is_dir() else 0o444)
    for action in (["list"], ["show", "MS-001"], ["verify"], ["as-of", "2026-11-25"], ["overdue"]):
        assert say("register", *action)[0] == 0, action
    assert say("verify", PDF, "--register", "register")[0] == 0
    assert say("verify", PDF)[0] == 0
    for path in (folder, *before):
        path.chmod(0o755 if path.is_dir() else 0o644)
    assert {path: path.stat().st_mtime_ns for path in folder.rglob("*")} == before


BAD = [
    (["issue"], "are required"),
    (["issue", "MS-001"], "--reason"),
    (["issue", "MS-001", "--reason", " "], "write one line"),
    (["issue", "MS-001", "--reason", "a\u202eb"], "write one line"),
    (["issue", "MS-001", "--reason", "x" * 300], "write one line"),
    (["issue", "NO", "--reason", "x"], "no job or product has the document number NO; there is: DS-barrier"),
    (["issue", "../../x", "--reason", "x"], "no job or product has the document number ../../x"),
    (["issue", "MS-001", "--reason", "x", "--path", "nowhere"], "there is no such file or folder"),
    (["issue", "MS-001", "--reason", "x", "--path", ""], "--path is empty"),
    (["issue", "MS-001", "--reason", "x", "--register", ""], "--register is empty"),
    (["issue", "MS-001", "--reason", "x", "--register", "job.yaml"], "is a file, not the folder of a register"),
    (["approve", "MS-001"], "are required"),
    (["approve", "MS-001", "--role", "sign", "--name", "A", "--meaning", "m"], "invalid choice"),
    (["approve", "MS-001", "--role", "check", "--name", "A\x07", "--meaning", "m"], "write one line"),
    (["verify", "nowhere.pdf"], "cannot be read"),
    (["verify", "."], "is not an ordinary file"),
    (["verify", "job.yaml", "--register", "nowhere"], "there is no register here"),
    (["verify", "job.yaml", "--allowed-signers", "nowhere"], "cannot be read"),
    (["register"], "ACTION"),
    (["register", "burn"], "invalid choice"),
    (["register", "list"], "there is no register here; `specgen issue` begins one"),
    (["register", "list", "--register", "job.yaml"], "is a file, not the folder of a register"),
    (["register", "show", "../x"], "there is no register here"),
    (["register", "as-of", "yesterday"], "is not a day"),
    (["register", "withdraw", "MS-001", "--reason", "r", "--by", "b"], "names no revision; write number and revision"),
    (["register", "withdraw", "MS-001@A", "--reason", "r", "--by", "b"], "this register does not know the document"),
    (["register", "export", "MS-001@A", "--out", "x.zip"], "the document is not in this register"),
    (["register", "verify", "--receipt", "nowhere"], "there is no register here"),
]


@pytest.mark.parametrize(("argv", "says"), BAD, ids=[" ".join(argv)[:40] for argv, _ in BAD])
def test_what_makes_no_sense_is_said_in_a_line(
    folder: Path, say: Callable[..., Said], argv: list[str], says: str
) -> None:
    before = sorted(folder.rglob("*"))
    code, out, err = say(*argv)
    assert (code, out) == (2, "")
    assert says in err
    assert err.count("\n") == 1
    assert sorted(folder.rglob("*")) == before


@pytest.mark.parametrize("argv", [["list"], ["show", "MS-001"], ["verify"], ["as-of", "2026-11-25"], ["overdue"]])
@pytest.mark.parametrize("data", [b"", b"{", b"\xff\xfe", b"null\n", b'{\n "record": "1"\n}\n', b"[" * 100_000])
def test_a_damaged_record_is_named_and_the_exit_code_says_so(
    folder: Path, say: Callable[..., Said], issued: Callable[[int], None], argv: list[str], data: bytes
) -> None:
    issued(1)
    (folder / "register" / "MS-001" / "0001" / "record.json").write_bytes(data)
    code, out, err = say("register", *argv)
    assert (code, err) == (1, "")
    assert "MS-001/0001/record.json" in out


@pytest.mark.parametrize(
    ("argv", "code"),
    [
        (["register", "list"], 1),
        (["register", "show", "MS-001"], 1),
        (["register", "verify"], 1),
        (["register", "as-of", "2026-11-25"], 1),
        (["register", "overdue"], 1),
        (["register", "export", "MS-001@C", "--out", "x.zip"], 2),
        (["register", "receipt", "x.json"], 2),
        (["register", "withdraw", "MS-001@C", "--reason", "r", "--by", "Ada Quill"], 2),
        (["compare", "register:MS-001@C", ".", *ON], 2),
        (["compare", "register:MS-001@A", "register:MS-001@C", *ON], 2),
    ],
)
@pytest.mark.parametrize("harm", ["one taken out", "one rewritten"])
def test_no_answer_is_given_on_a_chain_that_does_not_hold(
    folder: Path, say: Callable[..., Said], issued: Callable[[int], None], argv: list[str], code: int, harm: str
) -> None:
    """Every record can be read; only the links between them tell."""
    issued(3)
    second = folder / "register" / "MS-001" / "0002"
    if harm == "one taken out":
        shutil.rmtree(second)
    else:
        record = second / "record.json"
        record.write_text(record.read_text().replace('"first issue"', '"first Issue"'))
    got, out, err = say(*argv)
    assert got == code, (out, err)
    assert "MS-001/0003" in out + err
    assert not Path("x.zip").exists()
    assert not Path("x.json").exists()


@pytest.mark.parametrize(
    "argv",
    [
        ISSUE,
        ("register", "withdraw", "MS-001@A", "--reason", "r", "--by", "Ada Quill"),
    ],
)
def test_what_adds_a_record_offers_a_receipt(folder: Path, say: Callable[..., Said], argv: tuple[str, ...]) -> None:
    say(*APPROVE)
    if argv is not ISSUE:
        say(*ISSUE)
    code, out, _ = say(*argv, "--receipt", "../r.json")
    assert (code, out.splitlines()[-1]) == (0, "../r.json written")
    assert say("register", "verify", "--receipt", "../r.json")[1].endswith("all whole; against the receipt too.\n")


@pytest.mark.parametrize(
    ("argv", "target"),
    [
        (["register", "receipt"], "project.yaml"),
        (["register", "receipt"], "link.json"),
        (["register", "receipt"], "pipe"),
        (["register", "receipt"], "register/MS-001/0001/record.json"),
        (["register", "receipt"], "register/MS-001/new.json"),
        (["register", "receipt"], "register/new.json"),
        (["register", "receipt"], "approvals/MS-001/new.json"),
        (["register", "export", "MS-001@A", "--out"], "job.yaml"),
        (["register", "export", "MS-001@A", "--out"], "/dev/null"),
        (["register", "export", "MS-001@A", "--out"], "register/MS-001/0001/documents/x.zip"),
        (["explain", "--html"], "register/MS-001"),
        (["explain", "--html"], str(Path(specgen.__file__).parents[1] / "templates" / "catalogue")),
        (["render", ".", *ON, "--format", "csv", "--out"], "register/MS-001/0001/documents"),
        (["render", ".", *ON, "--format", "csv", "--out"], "register"),
    ],
)
def test_nothing_kept_is_written_over(
    folder: Path,
    say: Callable[..., Said],
    issued: Callable[[int], None],
    tree: Callable[[Path], dict[str, bytes]],
    argv: list[str],
    target: str,
) -> None:
    issued(1)
    (folder / "link.json").symlink_to(folder / "project.yaml")
    os.mkfifo(folder / "pipe")
    before = {name: data for name, data in tree(folder).items() if name != "link.json"}
    was_device = Path("/dev/null").is_char_device()
    code, out, err = say(*argv, target)
    assert (code, out, err.count("\n")) == (2, "", 1), (out, err)
    assert "name a" in err
    assert {name: data for name, data in tree(folder).items() if name != "link.json"} == before
    assert (folder / "link.json").is_symlink()
    assert Path("/dev/null").is_char_device() == was_device


def test_what_a_command_wrote_before_it_may_write_again(folder: Path, say: Callable[..., Said]) -> None:
    say(*APPROVE)
    say(*ISSUE)
    for _ in range(2):
        assert say("register", "receipt", "../r.json")[0] == 0
        assert say("register", "export", "MS-001@A", "--out", "../a.zip")[0] == 0


@pytest.mark.parametrize(
    "name", ["a:b.yaml", "what?.yaml", " blank/job.yaml", "x" * 200 + "/" + "y" * 200 + "/job.yaml"]
)
def test_a_source_no_register_can_keep_is_refused_before_anything_is_written(
    folder: Path, say: Callable[..., Said], name: str
) -> None:
    (folder / name).parent.mkdir(parents=True, exist_ok=True)
    (folder / "job.yaml").rename(folder / name)
    assert say(*APPROVE)[0] == 0
    code, out, err = say(*ISSUE)
    assert (code, out) == (1, "")
    assert "has a name that no register can keep" in err
    assert not (folder / "register").exists()


def test_compare_takes_a_revision_and_a_pdf(folder: Path, say: Callable[..., Said]) -> None:
    say(*APPROVE)
    say(*ISSUE)
    assert say("compare", "register:MS-001@A", ".", *ON)[1] == "register:MS-001@A -> .: no value changed.\n"
    job = folder / "job.yaml"
    job.write_text(job.read_text().replace("overcoat_interval: 30 min..24 h}", "overcoat_interval: 30 min..20 h}", 1))
    for old in ("register:MS-001@A", "register:register:MS-001@A", PDF):
        code, out, err = say("compare", old, ".", *ON)
        assert (code, err) == (0, ""), err
        assert "is now 30 min to 20 h" in out, out
    for wrong in ("register:MS-001", "register:@A", "register:MS-001@Z", "register:nowhere:MS-001@A", "job.pdf"):
        code, out, err = say("compare", wrong, ".", *ON)
        assert (code, out, err.count("\n")) == (2, "", 1), wrong


def test_compare_takes_an_export(folder: Path, say: Callable[..., Said]) -> None:
    say(*APPROVE)
    say(*ISSUE)
    job = folder / "job.yaml"
    job.write_text(job.read_text().replace("overcoat_interval: 30 min..24 h}", "overcoat_interval: 30 min..20 h}", 1))
    for reader in ("customer", "maker"):
        say("register", "export", "MS-001@A", "--out", f"../{reader}.zip", "--audience", reader)
        code, out, err = say("compare", f"../{reader}.zip", ".", *ON)
        assert (code, err) == (0, "")
        assert "is now 30 min to 20 h" in out


@pytest.mark.parametrize(
    "side", ["page.html", "list.csv", "register", "register/MS-001", "register/MS-001/0001", "broken.zip", "empty.zip"]
)
def test_what_is_no_side_is_refused(folder: Path, say: Callable[..., Said], side: str) -> None:
    say(*APPROVE)
    say(*ISSUE)
    for name in ("page.html", "list.csv", "broken.zip"):
        (folder / name).write_text("x")
    with zipfile.ZipFile(folder / "empty.zip", "w"):
        pass
    code, out, err = say("compare", side, ".", *ON)
    assert (code, out, err.count("\n")) == (2, "", 1)
    assert "no value changed" not in out


@pytest.mark.parametrize("how", ["pdf", "zip"])
def test_an_altered_model_is_not_compared(folder: Path, say: Callable[..., Said], how: str) -> None:
    """The certificate it carries holds the hash of its model."""
    from tests.register.test_issued_file import _altered

    say(*APPROVE)
    say(*ISSUE)
    altered = folder.parent / f"altered.{how}"
    if how == "pdf":
        data = (folder / PDF).read_bytes()
        carried = attachments(data)
        model = carried["model.customer.json"].replace(b"40 um", b"30 um")
        altered.write_bytes(_altered(data, attached={**carried, "model.customer.json": model}))
    else:
        say("register", "export", "MS-001@A", "--out", "../a.zip")
        with zipfile.ZipFile(folder.parent / "a.zip") as old, zipfile.ZipFile(altered, "w") as new:
            for name in old.namelist():
                new.writestr(
                    name,
                    old.read(name).replace(b"40 um", b"30 um")
                    if name.endswith("model.customer.json")
                    else old.read(name),
                )
    code, out, err = say("compare", str(altered), ".", *ON)
    assert (code, out) == (2, "")
    assert "was altered: the model it carries is not the one of its certificate" in err


def test_where_used_covers_issued_revisions(folder: Path, say: Callable[..., Said]) -> None:
    for _ in range(2):
        say(*APPROVE)
        say(*ISSUE)
    code, out, _ = say("where-used", "primer")
    assert (code, out.splitlines()) == (
        0,
        [
            "systems.cab  layers.primer",
            "jobs.refit  items.DOOR",
            "register: MS-001 A  superseded",
            "register: MS-001 B  in force",
        ],
    )
    (folder / "register" / "MS-001" / "0001" / "record.json").write_bytes(b"{}")
    assert "register: damaged: MS-001/0001/record.json" in say("where-used", "primer")[1]


def test_a_line_is_as_long_as_in_the_sources() -> None:
    from specgen.commands.typed import LINE_LIMIT
    from specgen.model.field_types import LINE_LIMIT as OF_SOURCES

    assert LINE_LIMIT == OF_SOURCES


def test_what_stands_in_a_register_cannot_steer_a_screen(
    folder: Path, say: Callable[..., Said], tmp_path: Path
) -> None:
    """A record made up by someone else, whose hashes hold: control signs in its texts are shown as U+FFFD."""
    from dataclasses import replace

    from specgen.register.folder import append
    from specgen.register.record import Record

    hostile = "x\x1b[2J\u202e\r\ny"
    made = Record("issue", 1, "MS-009", "A", "2026-11-25T09:00:00Z", hostile, certificate="0" * 64, title=hostile)
    made = replace(made, holders=(hostile,), contents={"products.primer": "0" * 64})
    append(folder / "register", made, {})
    for argv in (["list"], ["show", "MS-009"], ["as-of", "2026-11-25"], ["overdue"], ["verify"]):
        _, out, err = say("register", *argv)
        assert not {sign for sign in out + err if sign in "\x1b\u202e\r"}, argv
        assert out, argv
    # a name that is no text of any encoding, a pipe, a link in a circle
    place = folder / "register" / "MS-009" / "0001"
    os.mkfifo(place / "pipe")
    (place / "circle").symlink_to(place / "circle")
    (place / os.fsdecode(b"\xff\xfe")).touch()
    code, out, err = say("register", "verify")
    assert (code, err) == (1, "")
    assert sum("is a link or no ordinary file" in line for line in out.splitlines()) == 2
    assert "belongs to no record" in out
