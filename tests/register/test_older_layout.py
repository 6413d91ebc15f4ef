"""A register of an older layout: sheets and jobs of one folder in one register, frozen in format 1, before projects stood on a shared range.

``register_of_format_1.zip`` was issued by the program of 2026-11-25 and is never made anew: the first job of the demo as it stood
then, and a data sheet that was withdrawn.
"""

from __future__ import annotations

import shutil
import zipfile
from pathlib import Path

import pytest

from specgen.commands import main
from tests.good_spec import DEMO, DEMO_RANGE

ISSUED_THEN = Path(__file__).parent / "register_of_format_1.zip"


@pytest.fixture(autouse=True)
def _beside_the_folders_of_today(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """The demo's customer and range as they are today, with the register of that time in the customer's folder."""
    for folder in (DEMO, DEMO_RANGE):
        shutil.copytree(folder, tmp_path / folder.name, ignore=shutil.ignore_patterns("register"))
    with zipfile.ZipFile(ISSUED_THEN) as then:
        then.extractall(tmp_path / DEMO.name)
    monkeypatch.chdir(tmp_path / DEMO.name)


def _told(call: list[str], capsys: pytest.CaptureFixture[str], code: int = 0) -> str:
    assert main(call) == code
    return " ".join(capsys.readouterr().out.split())


def test_it_is_whole(capsys: pytest.CaptureFixture[str]) -> None:
    assert _told(["register", "verify"], capsys).startswith("3 records of 2 documents, all whole")


def test_a_changed_byte_in_it_is_still_found(capsys: pytest.CaptureFixture[str]) -> None:
    model = Path("register/MS-3134/0001/model.maker.json")
    model.write_bytes(model.read_bytes().replace(b'"48 um"', b'"38 um"'))
    assert "MS-3134/0001/model.maker.json was altered" in _told(["register", "verify"], capsys, 1)


def test_jobs_and_sheets_are_listed_together(capsys: pytest.CaptureFixture[str]) -> None:
    told = _told(["register", "list"], capsys)
    assert "DS-310 A 2026-06-02 withdrawn on 2026-11-09" in told
    assert "MS-3134 A 2026-06-08 in force" in told


def test_a_file_issued_then_is_known(capsys: pytest.CaptureFixture[str]) -> None:
    file = "register/MS-3134/0001/documents/MS-3134-method-statement.pdf"
    assert "unaltered" in _told(["verify", file, "--register", "register"], capsys)


def test_what_was_issued_is_compared_with_the_folder_of_today(capsys: pytest.CaptureFixture[str]) -> None:
    told = _told(["compare", "register:MS-3134@A", "."], capsys)
    assert "(Platform guard rails of tower wagon 32) was at least 4 K and is now at least 3 K" in told


def test_the_next_revision_is_issued_on_top_of_it(capsys: pytest.CaptureFixture[str]) -> None:
    assert "MS-3134 A: the sources say something else now; asks for a revision" in _told(
        ["register", "overdue"], capsys, 1
    )
    for what, who in (("check", "R. Halvorsen, Quality"), ("approve", "M. Okonjo-Lind, Fleet engineer")):
        _told(["approve", "MS-3134", "--role", what, "--name", who, "--meaning", "Agreed."], capsys)
    _told(["issue", "MS-3134", "--reason", "The sources have moved to the shared range."], capsys)
    assert _told(["register", "verify"], capsys).startswith("4 records of 2 documents, all whole")
    told = _told(["register", "list"], capsys)
    assert "MS-3134 A 2026-06-08 superseded by B" in told
