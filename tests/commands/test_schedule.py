"""`specgen schedule`: text, JSON, a calendar that reads back, and what cannot be planned."""

from __future__ import annotations

import json
from pathlib import Path

import pytest
from icalendar import Calendar

from specgen.commands import main
from tests.good_spec import GOOD, given, put, written


@pytest.fixture
def folder(tmp_path: Path) -> Path:
    (tmp_path / "all.yaml").write_text(written(given("scheduled")), encoding="utf-8")
    (tmp_path / "sketch.svg").write_bytes((GOOD / "sketch.svg").read_bytes())
    project = given("scheduled")
    (tmp_path / "project.yaml").write_text(written({"project": project.pop("project")}), encoding="utf-8")
    (tmp_path / "all.yaml").write_text(written(project), encoding="utf-8")
    return tmp_path


def test_text(folder: Path, capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["schedule", "refit", "--path", str(folder)]) == 0
    out = capsys.readouterr().out
    assert "Mon 2026-11-30 07:00 to 08:00  cab, application of primer" in out
    assert "The release of each step" in out


def test_start_of_the_command_line_goes_first(folder: Path, capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["schedule", "refit", "--path", str(folder), "--start", "2026-12-02 10:00"]) == 0
    assert "Wed 2026-12-02 10:00 to 11:00" in capsys.readouterr().out


def test_json(folder: Path, capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["schedule", "refit", "--path", str(folder), "--format", "json"]) == 0
    whole = json.loads(capsys.readouterr().out)
    assert whole["found"] is True
    assert whole["steps"][0]["start"] == "2026-11-30T07:00:00"
    assert {"load", "last coat", "may be handled", "returns to service", "fully cured"} <= set(whole["loads"][0])


def test_calendar_reads_back(folder: Path, capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["schedule", "refit", "--path", str(folder), "--format", "ics"]) == 0
    read = Calendar.from_ical(capsys.readouterr().out)
    events = [str(event["summary"]) for event in read.walk("VEVENT")]
    assert "refit: cab: application of primer, bay 1" in events
    assert any("returns to service" in event for event in events)


def test_no_plan(folder: Path, capsys: pytest.CaptureFixture[str]) -> None:
    spec = given("scheduled")
    put(spec, "jobs.refit.schedule.times.prime.time", "12 h")
    spec.pop("project")
    (folder / "all.yaml").write_text(written(spec), encoding="utf-8")
    assert main(["schedule", "refit", "--path", str(folder)]) == 1
    assert "which does not mean that there is none" in capsys.readouterr().out


@pytest.mark.parametrize("start", ["2026-11-31 07:00", "tomorrow", "2026-11-30", "2026-11-30 25:00"])
def test_bad_start(folder: Path, capsys: pytest.CaptureFixture[str], start: str) -> None:
    assert main(["schedule", "refit", "--path", str(folder), "--start", start]) == 2
    assert "is not a day and time" in capsys.readouterr().err


def test_a_plan_of_sources_with_errors_is_not_worked_to(folder: Path, capsys: pytest.CaptureFixture[str]) -> None:
    spec = given("scheduled")
    put(spec, "jobs.refit.climate.humidity", "30..75 %")
    spec.pop("project")
    (folder / "all.yaml").write_text(written(spec), encoding="utf-8")
    assert main(["schedule", "refit", "--path", str(folder)]) == 1
    assert "nothing is worked to this plan" in capsys.readouterr().out
    assert main(["schedule", "refit", "--path", str(folder), "--format", "ics"]) == 1
    told = capsys.readouterr()
    assert told.out == ""
    assert "CLI001" in told.err


@pytest.mark.parametrize(
    ("path", "value", "says"),
    [
        ("jobs.refit.schedule.working_hours.day.begins", '"25:00"', "begins"),
        ("jobs.refit.schedule.times.prime.time", "-1 h", "time"),
        ("jobs.refit.climate.humidity", "40..130 %", "humidity"),
    ],
)
def test_a_job_that_cannot_be_read_is_told_with_its_place(
    folder: Path, capsys: pytest.CaptureFixture[str], path: str, value: str, says: str
) -> None:
    spec = given("scheduled")
    put(spec, path, value)
    spec.pop("project")
    (folder / "all.yaml").write_text(written(spec), encoding="utf-8")
    assert main(["schedule", "refit", "--path", str(folder)]) == 2
    err = capsys.readouterr().err
    assert "the job refit cannot be read: all.yaml:" in err
    assert says in err


def test_start_on_a_sunday(folder: Path, capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["schedule", "refit", "--path", str(folder), "--start", "2026-11-29 07:00"]) == 1
    assert "nobody works on Sunday" in capsys.readouterr().out
