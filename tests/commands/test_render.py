"""`specgen render`: what it asks of the printing floor, what it writes, and when it refuses. The layout itself is tested elsewhere."""

from __future__ import annotations

import shutil
import sys
from collections.abc import Callable
from pathlib import Path
from typing import Any

import pytest

from specgen.commands import main
from specgen.commands.render import FORMATS
from specgen.printing import documents as printing
from specgen.printing.documents import Refused
from specgen.rendering.failure import RenderError
from tests.good_spec import GOOD

_FILES = {"MS-001-method-statement.pdf": b"%PDF", "MS-001-method-statement.html": b"<html>"}


@pytest.fixture
def folder(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    shutil.copytree(GOOD, tmp_path / "specs")
    monkeypatch.chdir(tmp_path)
    return tmp_path / "specs"


@pytest.fixture
def asked(monkeypatch: pytest.MonkeyPatch) -> list[dict[str, Any]]:
    """The orders the printing floor got; it prints two small files."""
    orders: list[dict[str, Any]] = []

    def print_documents(checked: object, **order: Any) -> dict[str, bytes]:
        orders.append(order)
        return dict(_FILES)

    monkeypatch.setattr(printing, "print_documents", print_documents)
    return orders


def _fails(monkeypatch: pytest.MonkeyPatch, fault: Exception) -> None:
    def print_documents(checked: object, **order: Any) -> dict[str, bytes]:
        raise fault

    monkeypatch.setattr(printing, "print_documents", print_documents)


def _render(*more: str) -> int:
    return main(["render", "specs", "--on", "2026-11-25", *more])


def test_files_are_written_and_named(
    folder: Path, asked: list[dict[str, Any]], capsys: pytest.CaptureFixture[str]
) -> None:
    assert _render("--out", "new/out") == 0
    assert {file.name: file.read_bytes() for file in Path("new/out").iterdir()} == _FILES
    assert capsys.readouterr() == (
        "new/out/MS-001-method-statement.pdf\n"
        "new/out/MS-001-method-statement.html\n"
        "2 files written; no errors, no warnings and no notes, assessed as at 2026-11-25.\n",
        "",
    )


def test_names_written_cannot_steer_a_screen(
    folder: Path, asked: list[dict[str, Any]], capsys: pytest.CaptureFixture[str]
) -> None:
    assert _render("--out", "out\x1b[31m\nout") == 0
    assert capsys.readouterr().out.startswith("out\ufffd[31m\ufffdout/MS-001-method-statement.pdf\nout\ufffd")


@pytest.mark.parametrize(
    ("arguments", "order"),
    [
        ([], {}),
        (["--format", "html"], {"formats": ("html",)}),
        (["--format", "html", "--format", "pdf", "--format", "html"], {"formats": ("html", "pdf")}),
        (["--document", "method-statement"], {"documents": ("method-statement",)}),
        (["--job", "refit", "--job", "refit", "--product", "base"], {"jobs": ("refit",), "products": ("base",)}),
    ],
)
def test_order(folder: Path, asked: list[dict[str, Any]], arguments: list[str], order: dict[str, Any]) -> None:
    assert _render("--out", "out", *arguments) == 0
    whole = {"documents": None, "formats": None, "jobs": None, "products": None, "offers": None, "told": None}
    assert asked == [{**whole, "register": Path("specs/register"), **order}]


def test_each_file_is_told_to_who_sits_at_a_terminal(
    folder: Path, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    def print_documents(checked: object, *, told: Callable[[str], None], **order: Any) -> dict[str, bytes]:
        for name in _FILES:
            told(name)
        return dict(_FILES)

    monkeypatch.setattr(printing, "print_documents", print_documents)
    monkeypatch.setattr(sys.stderr, "isatty", lambda: True)
    assert _render("--out", "out") == 0
    printed = capsys.readouterr()
    assert printed.err == (
        "specgen: MS-001-method-statement.pdf is laid out\nspecgen: MS-001-method-statement.html is laid out\n"
    )
    assert "laid out" not in printed.out


def test_formats_are_those_of_the_printing_floor() -> None:
    assert sorted(FORMATS) == sorted(printing.FORMATS)


def test_errors_are_reported_and_nothing_is_written(
    folder: Path, asked: list[dict[str, Any]], capsys: pytest.CaptureFixture[str]
) -> None:
    file = folder / "project.yaml"
    file.write_text(file.read_text("utf-8").replace("title: Yard", "titel: Yard"), "utf-8")
    assert _render("--out", "out") == 1
    printed = capsys.readouterr()
    assert printed.out.startswith("specs/project.yaml:2:1: error MOD002 title is missing in project\n")
    assert printed.err == "specgen: nothing was written\n"
    assert (asked, Path("out").exists()) == ([], False)


def test_warnings_are_counted(folder: Path, asked: list[dict[str, Any]], capsys: pytest.CaptureFixture[str]) -> None:
    file = folder / "products.yaml"
    file.write_text(file.read_text("utf-8").replace("    shelf_life: 18 months\n", ""), "utf-8")
    assert _render("--out", "out") == 0
    assert capsys.readouterr().out.splitlines()[-1] == (
        "2 files written; no errors, 1 warning and no notes, assessed as at 2026-11-25."
    )


@pytest.mark.parametrize(
    "fault", [Refused("two jobs have\nthe document number A"), RenderError("a picture is missing")]
)
def test_refusal_is_a_line(
    folder: Path, fault: Exception, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    _fails(monkeypatch, fault)
    assert _render("--out", "out") == 1
    assert capsys.readouterr() == ("", f"specgen: {' '.join(str(fault).split())}\nspecgen: nothing was written\n")
    assert not Path("out").exists()


@pytest.mark.parametrize(
    ("arguments", "said"),
    [
        (["--out", "specs/project.yaml"], "specs/project.yaml is not a folder; name one for the documents"),
        (["--out", "x" * 300], f"{'x' * 300} cannot be used: File name too long; name another folder"),
        (["--out", ""], "the name after --out is not a folder; name one for the documents"),
        (["--out", "specs/project.yaml/x"], "specs/project.yaml/x cannot be written to: Not a directory"),
        (["--out", "out", "--job", "refti"], "--job: there is no job 'refti'; there is: refit"),
        (
            ["--out", "out", "--document", "poster"],
            f"--document: there is no document 'poster'; there is: {', '.join(printing.DOCUMENTS)}",
        ),
        (
            ["--out", "out", "--format", "doc"],
            "--format: invalid choice: 'doc' (choose from 'pdf', 'html', 'csv'); see `specgen render --help`",
        ),
    ],
)
def test_what_cannot_run(
    folder: Path,
    asked: list[dict[str, Any]],
    arguments: list[str],
    said: str,
    capsys: pytest.CaptureFixture[str],
) -> None:
    before = (folder / "project.yaml").read_bytes()
    assert _render(*arguments) == 2
    assert capsys.readouterr() == ("", f"specgen: {said}\n")
    assert (folder / "project.yaml").read_bytes() == before
    assert not Path("out").exists()


def test_name_that_no_file_may_have(
    folder: Path, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    def print_documents(checked: object, **order: Any) -> dict[str, bytes]:
        return {"../x.pdf": b""}

    monkeypatch.setattr(printing, "print_documents", print_documents)
    assert _render("--out", "out") == 2
    assert capsys.readouterr().err.startswith(
        "specgen: out cannot be written to: The file name '../x.pdf' cannot be used: it contains"
    )
    assert not (folder.parent / "x.pdf").exists()
