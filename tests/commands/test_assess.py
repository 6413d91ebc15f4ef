"""`specgen assess`: exit codes, what it refuses to begin with, and the report it writes."""

from __future__ import annotations

import json
from pathlib import Path
from shutil import copytree

import pytest
import yaml

from specgen.commands import main
from tests.good_spec import DEMO, GOOD

JOB, GOING_ON = "tower-wagon-doors", "guard-rails"
READINGS = [str(file) for file in sorted((DEMO / "readings").glob(f"{JOB}-*.csv"))]
GIVEN = ["--path", str(DEMO), "--on", "2026-11-27", "--columns", "value=Thickness"]


def _assess(*arguments: str) -> int:
    return main(["assess", *arguments])


def test_what_does_not_conform_or_is_not_decided_ends_with_1(capsys: pytest.CaptureFixture[str]) -> None:
    # the day before the concession was agreed, and a day on which it holds
    assert _assess(JOB, *READINGS, *GIVEN, "--on", "2026-11-22") == 1
    out = capsys.readouterr().out
    assert out.startswith("tower-wagon-doors: not conforming, assessed as at 2026-11-22\n")
    assert "  SKIRT   not conforming  Skirt panel, outer face\n" in out
    # a rail that is too thin at one spot, and one that was not read
    assert _assess(GOING_ON, "--path", str(DEMO), "--on", "2026-11-27") == 1
    out = capsys.readouterr().out
    assert out.startswith("guard-rails: not conforming, assessed as at 2026-11-27\n")
    assert "  RAIL-LONG   not conforming " in out
    assert "  RAIL-SHORT  not decided " in out


def test_what_conforms_ends_with_0(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    film = Path(READINGS[0]).read_text("utf-8-sig").replace("252,0", "240,0").replace("257,5", "240,5")
    (tmp_path / "film.csv").write_text(film, encoding="utf-8")
    assert _assess(JOB, str(tmp_path / "film.csv"), READINGS[1], *GIVEN, "--format", "json") == 0
    found = json.loads(capsys.readouterr().out)
    assert found["verdict"] == "conforming"
    assert {item["verdict"] for item in found["items"]} == {"conforming"}
    assert [file["sha256"] for file in found["files"]] != []


def test_what_conforms_under_a_concession_ends_with_0_and_says_so(capsys: pytest.CaptureFixture[str]) -> None:
    assert _assess(JOB, *READINGS, *GIVEN) == 0
    out = capsys.readouterr().out
    assert out.startswith("tower-wagon-doors: conforming under concession, assessed as at 2026-11-27\n")
    assert "  SKIRT   conforming under concession  Skirt panel, outer face\n" in out
    assert "Concessions: 1 of this job, 1 in force, 1 used\n" in out


def test_a_job_is_released_by_its_records_from_the_first_work_to_the_last_repair(
    capsys: pytest.CaptureFixture[str],
) -> None:
    """The readings pass the rule of the job and fail others, with the reasons of both; what was found and repaired is told."""
    assert _assess(JOB, "--path", str(DEMO), "--on", "2026-11-27") == 0
    out = capsys.readouterr().out
    assert "Released by the records kept in the folder: DOOR by rh on 2026-11-24 15:30; SKIRT by rh" in out
    assert "NOT RELEASED" not in out
    assert "accepted: every spot measurement from 40" in out
    assert "  every reading within the limits: not conforming\n    - a reading of 38.4" in out
    assert "not conforming on 2026-11-20 09:25: a run of 300 mm at the foot of stringer 2; repaired 2026-11-25" in out


def test_names_can_be_erased_and_the_records_of_the_demo_still_release_the_job(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    """No file of readings names anybody: entries of people.yaml that are ids alone are enough."""
    folder = tmp_path / "specs_demo"
    copytree(DEMO.parent, folder)
    people = folder / DEMO.name / "people.yaml"
    entries = yaml.safe_load(people.read_text("utf-8"))["people"]
    names = [entry["name"] for entry in entries if "name" in entry]
    assert names
    for file in READINGS:
        assert not [name for name in names if name in Path(file).read_text("utf-8-sig")]
    people.write_text("people:\n" + "".join(f"  - {{id: {entry['id']}}}\n" for entry in entries), encoding="utf-8")
    assert _assess(JOB, "--path", str(folder / DEMO.name), "--on", "2026-11-27") == 0
    out = capsys.readouterr().out
    assert "LADDER by rh on 2026-11-27 08:30" in out
    assert not [name for name in names if name in out]


def test_the_filled_form_of_the_demo_is_read_and_conforms(capsys: pytest.CaptureFixture[str]) -> None:
    form = str(DEMO / "readings" / "locker-trim-record-sheets.pdf")
    assert _assess("locker-trim", form, "--path", str(DEMO), "--on", "2026-11-27") == 0
    printed = capsys.readouterr()
    assert printed.out.startswith("locker-trim: conforming, assessed as at 2026-11-27\n")
    assert "10 spots, 30 readings, 101" in printed.out
    assert "RDG0" not in printed.out


def test_the_filled_form_alone_releases_its_job(capsys: pytest.CaptureFixture[str]) -> None:
    assert _assess("locker-trim", "--path", str(DEMO), "--on", "2026-11-27") == 0
    out = capsys.readouterr().out
    assert "NOT RELEASED" not in out
    assert "Released by the records kept in the folder: LOCKER by rh on 2026-11-17 15:00; DRAWER by rh" in out
    assert "RDG0" not in out


def test_the_report_is_written(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    assert _assess(JOB, *READINGS, *GIVEN, "--report", str(tmp_path / "out")) == 0
    names = sorted(file.name for file in (tmp_path / "out").iterdir())
    assert names == ["CR-MS-3107-conformity-report.html", "CR-MS-3107-conformity-report.pdf"]
    assert capsys.readouterr().err.count(" written\n") == 2


def test_the_as_built_record_is_written_of_what_the_folder_keeps(tmp_path: Path) -> None:
    assert _assess(GOING_ON, "--path", str(DEMO), "--on", "2026-11-27", "--report", str(tmp_path)) == 1
    assert {"AB-MS-3134-as-built-record.html", "AB-MS-3134-as-built-record.pdf"} < {
        file.name for file in tmp_path.iterdir()
    }
    page = (tmp_path / "AB-MS-3134-as-built-record.html").read_text("utf-8")
    assert "NOT RELEASED" in page
    assert "nobody has released it" in page


@pytest.mark.parametrize(
    ("arguments", "said"),
    [
        ((JOB, "nowhere.csv"), "nowhere.csv: cannot be read"),
        (
            (JOB, READINGS[1], "--columns", "thickness=Thickness"),
            "'thickness=Thickness' is not understood; the names are point",
        ),
        ((JOB, READINGS[1], "--columns", "value"), "write it as in value=Thickness"),
        ((JOB, READINGS[1], "--all", "zebra=1"), "'zebra=1' is not understood"),
        ((JOB, READINGS[1], "--report", ""), "the name after --report is empty"),
        (("tower-wagon-door", READINGS[1]), "nearest: tower-wagon-doors"),
    ],
)
def test_what_cannot_be_begun_is_one_line_and_ends_with_2(
    arguments: tuple[str, ...], said: str, capsys: pytest.CaptureFixture[str]
) -> None:
    assert _assess(*arguments, "--path", str(DEMO)) == 2
    printed = capsys.readouterr()
    assert printed.out == ""
    assert said in printed.err
    assert printed.err.count("\n") == 1


def test_no_report_is_written_from_sources_with_errors(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    for file in GOOD.iterdir():
        text = file.read_text("utf-8").replace(
            "film: {min: 40 um, nominal: 60 um, max: 80 um}", "film: {min: 90 um, max: 80 um}"
        )
        (tmp_path / file.name).write_text(text, encoding="utf-8")
    (tmp_path / "readings.csv").write_text("point,item,value,by\nprepared,DOOR,conforming,ka\n", encoding="utf-8")
    asked = ["refit", str(tmp_path / "readings.csv"), "--path", str(tmp_path)]
    assert _assess(*asked) == 1
    capsys.readouterr()
    assert _assess(*asked, "--report", str(tmp_path / "out")) == 2
    assert "the sources have errors, so no report is written" in capsys.readouterr().err
    assert not (tmp_path / "out").exists()
