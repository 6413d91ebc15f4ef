"""The registers of the demo, of the tramway and of its range: whole, with three revisions of a job, a withdrawn sheet and a suspect reference, and what became weaker."""

from __future__ import annotations

import csv
from pathlib import Path

import pytest

from specgen.commands import main
from tests.good_spec import DEMO, DEMO_RANGE


@pytest.fixture(autouse=True)
def _in_the_demo(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.chdir(DEMO)


RANGE = ["--path", str(DEMO_RANGE)]


def _told(call: list[str], capsys: pytest.CaptureFixture[str], code: int = 0) -> list[str]:
    assert main(call) == code
    return capsys.readouterr().out.splitlines()


def test_it_is_whole(capsys: pytest.CaptureFixture[str]) -> None:
    assert _told(["register", "verify"], capsys)[0].startswith("6 records of 3 documents, all whole")
    assert _told(["register", "verify", *RANGE], capsys)[0].startswith("5 records of 3 documents, all whole")


def test_how_each_revision_stands(capsys: pytest.CaptureFixture[str]) -> None:
    lines = _told(["register", "list", *RANGE], capsys) + _told(["register", "list"], capsys)
    listed = [line.split("  ")[:3] for line in lines]
    stands = {name: said.partition(":")[0] for name, _, said in listed}
    assert stands == {
        "DS-210 A": "superseded by B",
        "DS-210 B": "in force",
        "DS-310 A": "withdrawn on 2026-11-09",
        "DS-410 A": "in force",
        "AB-MS-3107 A": "in force",
        "MS-3107 A": "in force",
        "MS-3134 A": "superseded by C",
        "MS-3134 B": "superseded by C",
        "MS-3134 C": "in force",
    }


def test_the_reference_is_suspect(capsys: pytest.CaptureFixture[str]) -> None:
    due = main(["register", "overdue"]), capsys.readouterr().out
    assert "MS-3134 C: it rests on DS-210 A: DS-210 B is in force since 2026-11-02; asks for a revision" in due[1]


def test_what_was_in_force_on_a_day(capsys: pytest.CaptureFixture[str]) -> None:
    of_range = [line.split("  ")[0] for line in _told(["register", "as-of", "2026-09-01", *RANGE], capsys)]
    named = [line.split("  ")[0] for line in _told(["register", "as-of", "2026-09-01"], capsys)]
    assert (of_range, named) == (["DS-210 A", "DS-310 A", "DS-410 A"], ["MS-3134 B"])


def test_an_issued_file_is_known_and_superseded(capsys: pytest.CaptureFixture[str]) -> None:
    file = "register/MS-3134/0001/documents/MS-3134-method-statement.pdf"
    assert main(["verify", file, "--register", "register"]) == 1
    assert "unaltered, but superseded by C" in capsys.readouterr().out


def test_what_was_built_rests_on_its_revision_and_is_found_by_a_batch(capsys: pytest.CaptureFixture[str]) -> None:
    shown = _told(["register", "show", "AB-MS-3107"], capsys)
    assert "    rests on MS-3107 A" in shown
    batch = Path("readings/tower-wagon-doors-record.csv").read_text("utf-8").splitlines()
    named = next(row["batch"] for row in csv.DictReader(batch) if row["batch"])
    assert any(
        line.startswith("register: AB-MS-3107 A  in force  TW-31")
        for line in _told(["where-used", f"batch:{named}"], capsys)
    )


def test_what_became_weaker(capsys: pytest.CaptureFixture[str]) -> None:
    told = "\n".join(_told(["compare", "register:MS-3134@A", "register:MS-3134@C", "--on", "2026-11-25"], capsys))
    flat = " ".join(told.split())
    assert flat.startswith("register:MS-3134@A -> register:MS-3134@C: 7 relaxed, 1 for a person to decide, 1 tightened")
    for sentence in (
        "Minimum DFT of the inspection point primer-film (DFT of primer) fell from 48 µm to 40 µm.",
        "Hold point of the inspection point total-film (Total DFT) is no longer stated",
        "The waiver weighed-rails (USE007) is new.",
    ):
        assert sentence in flat
