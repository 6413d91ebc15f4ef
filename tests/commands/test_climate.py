"""`specgen climate`: measured air against a job's limits, what is advised, how long a coat waits, and what cannot be read."""

from __future__ import annotations

import json
from datetime import date
from pathlib import Path

import pytest

from specgen.checking import check
from specgen.commands import main
from specgen.facts.job.plan import Plan
from specgen.facts.job.schedule import schedule
from specgen.findings import Severity
from specgen.model.parse import load
from tests.good_spec import GOOD


@pytest.fixture
def folder(tmp_path: Path) -> Path:
    for file in GOOD.glob("*.yaml"):
        text = file.read_text(encoding="utf-8")
        stated = text.replace(
            "air: 15 degC, if_exceeded: abrade with P400",
            "air: 15 degC, humidity: 60 %, film: 50 um, if_exceeded: abrade with P400",
        )
        (tmp_path / file.name).write_text(
            stated.replace("humidity: 35..85 %, dew", "humidity: 35..85 %, absolute_humidity: min 5 g/m3, dew"),
            encoding="utf-8",
        )
    return tmp_path


def climate(folder: Path, *more: str) -> int:
    return main(["climate", "refit", "--path", str(folder), *more])


def told(capsys: pytest.CaptureFixture[str]) -> str:
    return capsys.readouterr().out.replace("\N{NO-BREAK SPACE}", " ")


def test_all_met(folder: Path, capsys: pytest.CaptureFixture[str]) -> None:
    assert climate(folder, "--air", "20 degC", "--humidity", "55 %") == 0
    out = told(capsys)
    assert "dew point: 10.7 °C" in out
    assert "absolute humidity: 9.5 g/m³" in out
    assert "Not met" not in out
    assert "The release is the responsible person's" in out


def test_heated_bay_in_winter(folder: Path, capsys: pytest.CaptureFixture[str]) -> None:
    """Outside air of 0 °C and 80 % warmed to 20 °C: 21 % and 3.6 g/m³ (worked out in the reference)."""
    assert climate(folder, "--air", "20 degC", "--humidity", "21 %") == 1
    out = told(capsys)
    assert "absolute humidity: 3.6 g/m³" in out
    assert "Heating alone adds no water; humidify to at least 40 % at 20 °C" in out
    assert "No direct-fired or unflued heater" in out
    assert "dry the air" not in out.replace("do not dry the air", "")


def test_cold_damp_part(folder: Path, capsys: pytest.CaptureFixture[str]) -> None:
    assert climate(folder, "--air", "18 degC", "--humidity", "74 %", "--surface", "15 degC") == 1
    out = told(capsys)
    assert "Warm the part through until it is 3 K or more above the dew point, 13.3 °C" in out


def test_wait_is_carried_over_and_called_an_estimate(folder: Path, capsys: pytest.CaptureFixture[str]) -> None:
    """From 15 °C, 60 % (1.02 kPa) to 15 °C, 40 % (0.68 kPa): half as long again at least, for 30 min stated."""
    assert climate(folder, "--air", "15 degC", "--humidity", "45 %") == 0
    out = told(capsys)
    assert "at least 30 min" in out
    assert "an estimate" in out


def test_json_holds_the_same(folder: Path, capsys: pytest.CaptureFixture[str]) -> None:
    assert climate(folder, "--air", "20 degC", "--humidity", "21 %", "--format", "json") == 1
    whole = json.loads(told(capsys))
    assert whole["all_met"] is False
    missed = {entry["what"] for entry in whole["limits"] if not entry["met"]}
    assert missed == {"relative humidity", "absolute humidity"}
    assert whole["figures"]["absolute humidity"] == "3.6 g/m³"


@pytest.mark.parametrize(
    ("air", "humidity", "says"),
    [
        ("20 degC", "101 %", "above what a humidity can be"),
        ("-60 degC", "50 %", "there is no such air"),
        ("68 degC", "50 %", "°F entered as °C"),
        ("20", "50 %", "has no unit"),
        ("20 degC", "0 %", "there is no such air"),
        ("warm", "50 %", "--air"),
    ],
)
def test_bad_air(folder: Path, capsys: pytest.CaptureFixture[str], air: str, humidity: str, says: str) -> None:
    assert climate(folder, f"--air={air}", "--humidity", humidity) == 2
    assert says in capsys.readouterr().err


def test_unknown_job(folder: Path, capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["climate", "refitt", "--path", str(folder), "--air", "20 degC", "--humidity", "50 %"]) == 2
    assert "nearest: refit" in capsys.readouterr().err


FOLDERS = Path(__file__).parents[1] / "climate"
ON = date(2026, 11, 26)


def errors(folder: str) -> list[tuple[str, str]]:
    return [
        (finding.id, finding.remedy)
        for finding in check(FOLDERS / folder, ON).report
        if finding.severity is Severity.ERROR
    ]


def test_winter_bay_is_refused_for_the_water_alone_and_its_advice_followed_passes() -> None:
    """Outside air of 0 °C and 80 % is 24 % at 18 °C; the advice is 33 % and more, and the mended folder asks for 40 %."""
    refused = errors("winter_bay_refused")
    assert [id for id, _ in refused] == ["CLI012"]
    assert "heating alone adds no water; humidify to at least 33 % at 18 °C" in refused[0][1].replace(
        "\N{NO-BREAK SPACE}", " "
    )
    assert errors("winter_bay_mended") == []


def test_friday_at_two_is_monday_for_a_coat_that_may_not_wait_a_week_end() -> None:
    """Primed by 16:15 on Friday the topcoat would follow after 62 h, and 16 h are allowed; so the work begins on Monday."""
    spec = load(FOLDERS / "friday_afternoon").spec
    assert spec is not None
    found = schedule(spec.jobs["guard-rails"], spec)
    assert isinstance(found, Plan)
    assert {step.start.date() for step in found.steps} == {date(2026, 11, 30), date(2026, 12, 1)}


def test_times_of_friday_are_worked_out_by_hand() -> None:
    """At 16 °C, the coldest air. Interval: 75 min at 12 °C and 40 at 20 make 54.8, the coat states 90: 09:15 and 90 min are 10:45.

    Full cure: 14 days at 14 °C and 9 at 20 make 14 x (9/14)^(1/3) = 12.083 days, 290 h less a minute, from Monday 12:00 on.
    """
    spec = load(FOLDERS / "friday_afternoon").spec
    assert spec is not None
    found = schedule(spec.jobs["guard-rails"], spec)
    assert isinstance(found, Plan)
    primed, top = (step for step in found.steps if step.layer is not None)
    assert [f"{moment:%d %H:%M}" for moment in (primed.end, top.start)] == ["30 09:15", "30 10:45"]
    (done,) = found.done
    assert f"{done.handling:%m-%d %H:%M}" == "12-01 08:00"
    assert f"{done.cured:%m-%d %H:%M}" == "12-12 14:00"
