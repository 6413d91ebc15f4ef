"""Where a batch of paint went, and what no answer is given on: the question of a recall."""

from __future__ import annotations

from pathlib import Path
from shutil import copytree

import pytest

from specgen.commands import main
from tests.good_spec import DEMO, GOOD

HEAD = "item,coat,product,batch,expires,cans,on,by\n"


@pytest.fixture
def folder(tmp_path: Path) -> Path:
    copytree(GOOD, tmp_path / "specs")
    (tmp_path / "specs" / "readings").mkdir()
    return tmp_path / "specs"


def _said(folder: Path, batch: str, capsys: pytest.CaptureFixture[str]) -> list[str]:
    assert main(["where-used", f"batch:{batch}", "--path", str(folder)]) == 0
    return capsys.readouterr().out.splitlines()


def test_every_vehicle_that_carries_a_batch_is_found(folder: Path, capsys: pytest.CaptureFixture[str]) -> None:
    (folder / "readings" / "refit-record.csv").write_text(
        HEAD
        + "DOOR,primer,primer,B 17,2027-01-31,2,2026-11-16,K. A.\nSTEP,barrier,barrier,B18,2027-01-31,1,2026-11-17,K. A.\n"
        ",clear,clear,b17,2027-01-31,,,\n"
    )
    assert _said(folder, "B17", capsys) == [
        "jobs.refit  T-01, T-02  DOOR  primer  primer  2 packs  2026-11-16  K. A.  readings/refit-record.csv:2",
        "jobs.refit  T-01, T-02  DOOR, STEP  clear  clear  readings/refit-record.csv:4",
        "Vehicles or plant: T-01, T-02",
    ]
    assert _said(folder, "B81", capsys) == [
        "No record names the batch B81; nearest: B18",
        "Not known: jobs.refit records no batch of base on DOOR",
    ]
    (folder / "readings" / "refit-record.csv").write_text(
        HEAD + "DOOR,primer,primer,B17,2027-01-31,2,2026-11-16,ka\n,base,,B18,2027-01-31,1,2026-11-17,ka\n"
    )
    # each item for itself; a batch that names its coat alone is one of its product
    assert _said(folder, "B99", capsys)[1:] == [
        "Not known: jobs.refit records no batch of clear on DOOR",
        "Not known: jobs.refit records no batch of barrier on STEP",
    ]
    assert _said(folder, "B17", capsys)[2:] == []
    assert _said(folder, "B1", capsys)[0].startswith("No record names the batch B1")


def test_what_is_not_known_is_never_silent(folder: Path, capsys: pytest.CaptureFixture[str]) -> None:
    assert _said(folder, "B17", capsys) == [
        "No record names the batch B17",
        "Not known: no batch is recorded of jobs.refit",
    ]
    (folder / "readings" / "other.csv").write_text(HEAD + ",primer,primer,B17,,,,\n")
    (folder / "readings" / "refit-broken.pdf").write_bytes(b"%PDF-1.7 broken")
    (folder / "readings" / "refit-record.csv").write_text(HEAD + "DOOR,primer,primer,=B17,,,,\n")
    said = _said(folder, "B17", capsys)
    assert said[0] == "No record names the batch B17"
    assert "Not known: readings/other.csv is not called by a job of this folder" in said
    assert any("refit-broken.pdf" in line and "no filled record sheet" in line for line in said)
    assert any("refit-record.csv:2:4" in line and "formula" in line for line in said)


def test_a_sign_for_no_batch_is_no_batch_of_record(folder: Path, capsys: pytest.CaptureFixture[str]) -> None:
    (folder / "readings" / "refit-record.csv").write_text(HEAD + ",primer,primer,?,,,,\n,base,base,n/a,,,,\n")
    assert _said(folder, "B17", capsys) == [
        "No record names the batch B17",
        "Not known: no batch is recorded of jobs.refit",
    ]


def test_a_batch_needs_its_number(folder: Path, capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["where-used", "batch: ", "--path", str(folder)]) == 2
    assert "name the batch" in capsys.readouterr().err


def test_the_demo_answers_a_recall(capsys: pytest.CaptureFixture[str]) -> None:
    first = _said(DEMO, "T410-0932", capsys)[0]
    assert _said(DEMO, "t 410 - 0932", capsys)[0] == first
    assert first.startswith("jobs.tower-wagon-doors  TW-31  ")
    assert "topcoat-410  12 packs" in first
    # one that went into two jobs, and in each every vehicle
    of_primer = _said(DEMO, "P210-2641", capsys)
    assert [line.split("  ")[:3] for line in of_primer[:2]] == [
        ["jobs.guard-rails", "TW-32", "RAIL-LONG, RAIL-SHORT"],
        ["jobs.tower-wagon-doors", "TW-31", "DOOR, SKIRT, LADDER"],
    ]
    # the record that was issued of the doors, then the vehicles of both
    assert of_primer[2].startswith("register: AB-MS-3107 A  in force  TW-31  DOOR, SKIRT, LADDER")
    assert of_primer[3] == "Vehicles or plant: TW-32, TW-31"
    # of jobs with this product alone
    assert of_primer[4].startswith("Not known: no batch is recorded of jobs.depot-shunter-refit, ")
    assert "tool-trailer-frame" not in of_primer[4]
    of_repair = _said(DEMO, "T410-0951", capsys)
    assert "  LADDER part 2  top  topcoat-410  1 pack  " in of_repair[0]
    assert "Not known: jobs.guard-rails records no batch of topcoat-410 on RAIL-LONG, RAIL-SHORT" in of_repair
