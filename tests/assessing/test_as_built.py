"""Whether the records a folder keeps release a job: one release of each item after its last record, by somebody who is listed."""

from __future__ import annotations

import json
from pathlib import Path
from shutil import copytree

import pytest

from specgen.assessing.faults import READING_FAULTS
from specgen.commands import main
from specgen.findings import Severity
from tests.good_spec import GOOD

HEAD = "item,coat,product,batch,expires,cans,work,on,by\n"
PEOPLE = "people:\n  - {id: ka, name: K. Aldermoor, qualifications: [{id: level, what: level 2, until: 2026-11-17}]}\n  - {id: tb}\n"
RELEASE = ",,,,,,release,2026-11-20,tb\n"


@pytest.fixture
def folder(tmp_path: Path) -> Path:
    copytree(GOOD, tmp_path / "specs")
    (tmp_path / "specs" / "readings").mkdir()
    return tmp_path / "specs"


def _open(folder: Path, rows: str, capsys: pytest.CaptureFixture[str], people: str = "") -> list[str]:
    (folder / "readings" / "refit-record.csv").write_text(HEAD + rows)
    if people:
        (folder / "people.yaml").write_text(people)
    assert main(["assess", "refit", "--path", str(folder), "--on", "2026-11-27", "--format", "json"]) == 1
    return [f"{one['where']}: {one['what']}" for one in json.loads(capsys.readouterr().out)["open"]]


def test_a_warning_on_common_practice_is_told_and_keeps_nothing_open(
    folder: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    """Two warnings on the same reading: its gauge was last checked the day before, and its row has a twin without a value."""
    head = "point,item,spot,value,unit,gauge,serial,checked_on,on,by\n"
    reading = "primer-film,DOOR,1,56,um,G,K-1,2026-11-15,2026-11-16,ka\n"
    (folder / "readings" / "refit-film.csv").write_text(head + reading + reading.replace("1,56", "2,"))
    said = _open(folder, "", capsys)
    assert any(line.startswith("refit-film.csv:3: the row has no value") for line in said)
    assert not any("common practice" in line or line.startswith("refit-film.csv:2") for line in said)
    assert main(["assess", "refit", "--path", str(folder), "--on", "2026-11-27"]) == 1
    assert "readings/refit-film.csv:2:8: warning RDG025 last checked on 2026-11-15" in capsys.readouterr().out


def test_what_is_told_alone_is_never_an_error_nor_what_takes_a_row() -> None:
    told = {fault.id: fault.severity for fault in READING_FAULTS.values() if not fault.is_open}
    assert told == {"RDG023": Severity.WARNING, "RDG025": Severity.WARNING}


def test_what_no_record_tells_of_is_open(folder: Path, capsys: pytest.CaptureFixture[str]) -> None:
    said = _open(folder, "STEP,barrier,barrier,B1,2027-01-31,2,,2026-11-16 09:00,ka\n", capsys)
    assert "DOOR: nobody has released it" in said
    assert "DOOR: primer: day of application, applicator, batch, expiry date, packs used not recorded" in said
    assert not any(line.startswith("STEP: primer:") for line in said)
    said = _open(folder, "STEP,barrier,barrier,B1,2027-01-31,,,2026-11-16 09:00,ka\n" + RELEASE, capsys)
    assert "STEP: primer: packs used not recorded" in said
    assert not any("nobody has released" in line for line in said)


@pytest.mark.parametrize(
    ("rows", "told"),
    [
        (RELEASE + RELEASE, "DOOR is released a second time; see row 2 of readings/refit-record.csv"),
        (
            RELEASE + ",,,,,,application,2026-11-21,tb\n",
            "DOOR is released on 2026-11-20, before the record of 2026-11-21 in row 3 of readings/refit-record.csv",
        ),
        (",,,,,,release,2026-11-20,zz\n", "'zz' is nobody of people.yaml"),
        (",,,,,,release,2026-11-20,\n", "the row of release does not state by"),
        (",,,,,,acceptance,2026-11-20,K. Aldermoor\n", "level 2 of ka had ended on 2026-11-17, before 2026-11-20"),
    ],
)
def test_a_release_that_cannot_be_is_told(
    folder: Path, rows: str, told: str, capsys: pytest.CaptureFixture[str]
) -> None:
    assert any(line.endswith(told) for line in _open(folder, rows, capsys, PEOPLE))


def test_an_erased_person_stands_by_the_id(folder: Path, capsys: pytest.CaptureFixture[str]) -> None:
    """The entry is its id alone; without the file nobody can be asked for."""
    assert not any("nobody of people.yaml" in line for line in _open(folder, RELEASE, capsys, PEOPLE))
    (folder / "people.yaml").unlink()
    assert not any("people.yaml" in line for line in _open(folder, RELEASE, capsys))
    assert main(["check", str(folder), "--on", "2026-11-27"]) == 0


def test_headings_are_mapped_by_the_folder_and_a_line_that_is_none_is_open(
    folder: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    (folder / "readings" / "columns.txt").write_text("value=Thickness\nzebra=Stripe\n")
    said = _open(folder, RELEASE, capsys)
    assert any("columns.txt:2" in line and "zebra=Stripe" in line for line in said)


def test_without_any_file_nothing_is_assessed(folder: Path, capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["assess", "refit", "--path", str(folder)]) == 2
    assert "readings" in capsys.readouterr().err


@pytest.mark.parametrize(
    ("rows", "told"),
    [
        # a release that was renewed covers what was recorded before it; acceptance and the day itself come after none
        (
            RELEASE + ",,,,,,application,2026-11-21,tb\n" + RELEASE.replace("11-20", "11-22"),
            "is released a second time",
        ),
        (RELEASE + ",,,,,,acceptance,2026-11-21,tb\n", ""),
        (RELEASE + ",,,,,,application,2026-11-20,tb\n", ""),
        (RELEASE.replace("11-20", "11-20 12:00") + ",,,,,,application,2026-11-20 12:00,tb\n", ""),
        (RELEASE.replace("11-20", "11-20 12:00") + ",,,,,,application,2026-11-20 12:01,tb\n", "before the record of"),
        # a qualification holds on its last day
        (",,,,,,acceptance,2026-11-17,ka\n", ""),
        (",,,,,,acceptance,2026-11-18,ka\n", "had ended on 2026-11-17"),
    ],
)
def test_a_release_is_told_for_no_other_reason(
    folder: Path, rows: str, told: str, capsys: pytest.CaptureFixture[str]
) -> None:
    said = [
        line
        for line in _open(folder, rows, capsys, PEOPLE)
        if any(words in line for words in ("second time", "before the record of", "had ended on"))
    ]
    assert len(said) == (1 if told else 0)
    assert all(told in line for line in said)
