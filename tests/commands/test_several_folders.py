"""A folder that holds several projects: check and render go through them in turn, every other command says which there are."""

from __future__ import annotations

from pathlib import Path

import pytest

from specgen.commands import main
from tests.good_spec import ON
from tests.two_folders import two_folders


@pytest.fixture
def both(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    monkeypatch.chdir(tmp_path)
    two_folders(tmp_path / "specs")
    return tmp_path / "specs"


def _run(*argv: str, capsys: pytest.CaptureFixture[str]) -> tuple[int, str, str]:
    code = main(list(argv))
    said = capsys.readouterr()
    return code, said.out, said.err


def test_check_goes_through_them(both: Path, capsys: pytest.CaptureFixture[str]) -> None:
    code, out, err = _run("check", "specs", "--on", ON.isoformat(), capsys=capsys)
    assert (code, err) == (0, "")
    assert out.index("specs/range/\n\n") < out.index("specs/yard/\n\n")
    assert out.count("assessed as at 2026-11-25") == 2
    file = both / "yard/records.yaml"
    file.write_text(file.read_text("utf-8").replace("system: cab", "system: cub"), "utf-8")
    code, out, _ = _run("check", "specs", "--on", ON.isoformat(), capsys=capsys)
    assert code == 1
    assert "specs/yard/records.yaml:" in out


def test_check_says_what_it_does_not_go_through(both: Path, capsys: pytest.CaptureFixture[str]) -> None:
    two_folders(both / "former")
    code, out, _ = _run("check", "specs", "--on", ON.isoformat(), capsys=capsys)
    assert (code, out.count("assessed as at 2026-11-25")) == (0, 2)
    assert out.endswith(
        "\nspecs/former/ holds several projects of its own, which were not checked; name that folder.\n"
    )
    assert _run("check", "specs/former", "--on", ON.isoformat(), capsys=capsys)[0] == 0


def test_render_prints_each_into_its_own_folder(both: Path, capsys: pytest.CaptureFixture[str]) -> None:
    asked = ("render", "specs", "--format", "html", "--format", "csv", "--out", "out", "--on", ON.isoformat())
    code, out, err = _run(*asked, capsys=capsys)
    assert (code, err) == (0, "")
    written = {path.relative_to("out").as_posix() for path in Path("out").rglob("*.*")}
    assert "yard/MS-001-method-statement.html" in written
    assert "range/DS-primer-data-sheet.html" in written
    assert {name.partition("/")[0] for name in written} == {"range", "yard"}
    assert f"{len(written)} files written; " in out
    assert _run(*asked[:-4], "--out", "one", "--job", "refit", capsys=capsys)[0] == 0
    assert {path.name for path in Path("one").iterdir()} == {"yard"}
    code, _, err = _run(*asked, "--job", "nobody", capsys=capsys)
    assert (code, "there is no job 'nobody'" in err) == (2, True)


def test_nothing_is_written_where_one_has_errors(both: Path, capsys: pytest.CaptureFixture[str]) -> None:
    file = both / "range/records.yaml"
    file.write_text(file.read_text("utf-8").replace("coat_within", "coat_before"), "utf-8")
    code, out, err = _run("render", "specs", "--format", "html", "--out", "out", capsys=capsys)
    assert (code, err) == (1, "specgen: nothing was written\n")
    assert "specs/range/records.yaml:" in out
    assert not Path("out").exists()


@pytest.mark.parametrize(
    "asked",
    [
        ("check", "specs", "--format", "json"),
        ("range", "specs"),
        ("compare", "specs", "specs/yard"),
        ("approve", "MS-001", "--role", "approve", "--name", "A", "--meaning", "m", "--path", "specs"),
        ("issue", "MS-001", "--reason", "r", "--path", "specs"),
        ("register", "list", "--path", "specs"),
        ("explain", "working:x", "--job", "refit", "--path", "specs"),
        ("upgrade", "specs"),
    ],
)
def test_others_say_which_there_are(both: Path, asked: tuple[str, ...], capsys: pytest.CaptureFixture[str]) -> None:
    said = "specgen: specs holds several projects; name one of them: specs/range, specs/yard\n"
    assert _run(*asked, capsys=capsys) == (2, "", said)


def test_where_used_tells_of_all(both: Path, capsys: pytest.CaptureFixture[str]) -> None:
    code, out, _ = _run("where-used", "primer", "--path", "specs", capsys=capsys)
    assert code == 0
    assert any(line.startswith("specs/yard/ jobs.refit  ") for line in out.splitlines())
    assert any(line.startswith("specs/range/ systems.cab  ") for line in out.splitlines())
    code, _, err = _run("where-used", "nothing", "--path", "specs", capsys=capsys)
    assert (code, "there is no source 'nothing'" in err) == (2, True)


def test_one_project_may_have_its_files_in_folders(both: Path, capsys: pytest.CaptureFixture[str]) -> None:
    """A folder with one project below it is that project, as it was; a project beside folders goes before those in them."""
    (both / "range").rename(both.parent / "range")
    file = both / "yard/project.yaml"
    file.write_text(file.read_text("utf-8"), "utf-8")
    code, out, _ = _run("check", "specs", "--on", ON.isoformat(), capsys=capsys)
    assert (code, out.count("assessed as at")) == (0, 1)
    assert "specs/yard/project.yaml" in out
