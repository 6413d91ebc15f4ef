"""`specgen check`: formats, exit codes, and file names that open from where one stands."""

from __future__ import annotations

import json
import os
import shutil
from pathlib import Path

import pytest

from specgen.commands import main
from specgen.rules.declare import all_rules
from tests.good_spec import GOOD


@pytest.fixture
def folder(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    """A copy of the good sources, as the folder `specs` of the current one."""
    shutil.copytree(GOOD, tmp_path / "specs")
    monkeypatch.chdir(tmp_path)
    return tmp_path / "specs"


def _change(folder: Path, name: str, old: str, new: str) -> None:
    file = folder / name
    text = file.read_text("utf-8")
    assert text.count(old) == 1
    file.write_text(text.replace(old, new), "utf-8")


def _break(folder: Path) -> None:
    _change(folder, "project.yaml", "title: Yard tractors", "titel: Yard tractors")


def _warn(folder: Path) -> None:
    _change(folder, "products.yaml", "    shelf_life: 18 months\n", "")


def _note(folder: Path) -> None:
    _change(folder, "project.yaml", "customer: {name: Example Yard}", "customer: {name: Example Yard, address: }")


def test_by_file(folder: Path, capsys: pytest.CaptureFixture[str]) -> None:
    _change(folder, "products.yaml", "    shelf_life: 18 months\n", "    shelf_live: 18 months\n")
    _note(folder)
    first = folder / "a.yaml"
    first.write_text("# nothing\n", "utf-8")
    shown = {}
    for flag in ([], ["--by-file"]):
        assert main(["check", "specs", *flag]) == 1
        shown[bool(flag)] = [line for line in capsys.readouterr().out.splitlines() if line.startswith("specs/")]
    assert [line.split(":")[0] for line in shown[True]] == ["specs/a.yaml", "specs/products.yaml", "specs/project.yaml"]
    assert [line.split(": ")[1].split()[0] for line in shown[False]] == ["error", "note", "note"]


def test_clean(folder: Path, capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["check", "specs", "--on", "2026-11-25"]) == 0
    assert capsys.readouterr() == ("No findings, assessed as at 2026-11-25.\n", "")


def test_day_of_today_is_the_default(
    folder: Path, capsys: pytest.CaptureFixture[str], monkeypatch: pytest.MonkeyPatch
) -> None:
    from datetime import date

    from specgen.commands import folder as floor

    monkeypatch.setattr(floor, "today", lambda: date(2030, 1, 2))
    assert main(["check", "specs"]) == 0
    assert capsys.readouterr().out == "No findings, assessed as at 2030-01-02.\n"


@pytest.mark.parametrize(
    ("change", "codes"),
    [(_break, (1, 1, 1)), (_warn, (0, 1, 1)), (_note, (0, 0, 1))],
    ids=["error", "warning", "note"],
)
def test_exit_code(folder: Path, change: object, codes: tuple[int, int, int]) -> None:
    change(folder)  # type: ignore[operator]  # one of the three changes above
    assert main(["check", "specs"]) == codes[0]
    assert tuple(main(["check", "specs", "--fail-on", level]) for level in ("error", "warning", "note")) == codes


def test_place_opens_from_the_current_folder(folder: Path, capsys: pytest.CaptureFixture[str]) -> None:
    _warn(folder)
    assert main(["check", "specs", "--on", "2026-11-25"]) == 0
    first = capsys.readouterr().out.splitlines()[0]
    assert first.startswith("specs/products.yaml:")
    assert Path(first.split(":")[0]).is_file()


def test_folder_name_cannot_steer_a_screen(folder: Path, capsys: pytest.CaptureFixture[str]) -> None:
    _warn(folder)
    folder.rename("red\x1b[31m\nred")
    assert main(["check", "red\x1b[31m\nred", "--on", "2026-11-25"]) == 0
    assert capsys.readouterr().out.startswith("red\ufffd[31m\ufffdred/products.yaml:")


@pytest.mark.skipif(os.name == "nt", reason="there the folder one stands in cannot be deleted")
def test_from_a_deleted_folder_the_whole_path_is_shown(folder: Path, capsys: pytest.CaptureFixture[str]) -> None:
    _warn(folder)
    gone = folder.parent / "gone"
    gone.mkdir()
    os.chdir(gone)
    gone.rmdir()
    assert main(["check", str(folder), "--on", "2026-11-25"]) == 0
    assert capsys.readouterr().out.startswith(f"{folder.as_posix()}/products.yaml:")
    os.chdir(folder)


@pytest.mark.parametrize("arguments", [["specs/products.yaml"], ["specs/"], ["./specs"], ["specs/../specs"]])
def test_path_may_be_written_in_other_ways(
    folder: Path, arguments: list[str], capsys: pytest.CaptureFixture[str]
) -> None:
    _warn(folder)
    main(["check", *arguments])
    assert capsys.readouterr().out.startswith("specs/products.yaml:")


def test_from_inside_the_folder(
    folder: Path, capsys: pytest.CaptureFixture[str], monkeypatch: pytest.MonkeyPatch
) -> None:
    _warn(folder)
    monkeypatch.chdir(folder)
    main(["check", "."])
    assert capsys.readouterr().out.startswith("products.yaml:")


def test_from_elsewhere_the_whole_path_is_shown(
    folder: Path, capsys: pytest.CaptureFixture[str], monkeypatch: pytest.MonkeyPatch
) -> None:
    _warn(folder)
    (folder.parent / "other").mkdir()
    monkeypatch.chdir(folder.parent / "other")
    main(["check", "../specs"])
    assert capsys.readouterr().out.startswith(f"{folder.resolve().as_posix()}/products.yaml:")


def test_json(folder: Path, capsys: pytest.CaptureFixture[str]) -> None:
    _break(folder)
    assert main(["check", "specs", "--format", "json", "--on", "2026-11-25"]) == 1
    whole = json.loads(capsys.readouterr().out)
    assert (whole["on"], whole["folder"], whole["counts"]) == (
        "2026-11-25",
        "specs",
        {"error": 2, "warning": 0, "note": 0},
    )
    assert [(f["id"], f["file"], f["path"]) for f in whole["findings"]] == [
        ("MOD002", "project.yaml", "project.title"),
        ("MOD001", "project.yaml", "project.titel"),
    ]


def test_github(folder: Path, capsys: pytest.CaptureFixture[str]) -> None:
    _break(folder)
    assert main(["check", "specs", "--format", "github", "--on", "2026-11-25"]) == 1
    lines = capsys.readouterr().out.splitlines()
    assert lines[1] == (
        "::error file=specs/project.yaml,line=5,col=3,endColumn=7,title=MOD001::titel is not a key known here"
        "%0AA key that is not read is a requirement that never reaches the document.%0Adid you mean title?"
    )
    assert lines[-1] == "2 errors, no warnings and no notes, assessed as at 2026-11-25."


@pytest.mark.skipif(not hasattr(os, "geteuid") or os.geteuid() == 0, reason="root may read everything")
def test_unreadable_folder(folder: Path, capsys: pytest.CaptureFixture[str]) -> None:
    folder.chmod(0)
    try:
        assert main(["check", "specs"]) == 2
    finally:
        folder.chmod(0o755)
    assert capsys.readouterr().err == "specgen: specs cannot be opened: Permission denied.\n"


def test_empty_folder(tmp_path: Path, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]) -> None:
    monkeypatch.chdir(tmp_path)
    assert main(["check", "."]) == 1
    assert capsys.readouterr().out.startswith(
        "project.yaml:1:1: error MOD008 no file of the folder has a project source"
    )


def test_nothing_is_written(folder: Path) -> None:
    before = {file: file.read_bytes() for file in folder.rglob("*")}
    main(["check", "specs"])
    assert {file: file.read_bytes() for file in folder.rglob("*")} == before


def test_timings_name_reading_and_every_rule(folder: Path, capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["check", "specs", "--timings", "--format", "json"]) == 0
    told = capsys.readouterr()
    json.loads(told.out)  # the report stays whole
    *parts, whole = told.err.splitlines()
    named = [line.split("  ")[-1] for line in parts]
    assert sorted(named) == sorted(["reading the sources", *(rule.id for rule in all_rules())])
    seconds = [float(line.split()[0]) for line in parts]
    assert seconds == sorted(seconds, reverse=True)
    assert abs(float(whole.split()[0]) - sum(seconds)) < 0.001 * len(seconds)
