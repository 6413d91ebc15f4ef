"""What a source or a table reaches."""

from __future__ import annotations

from pathlib import Path
from shutil import copytree

import pytest

from specgen.commands import main

GOOD = str(Path(__file__).parents[1] / "good")


@pytest.mark.parametrize(
    ("asked", "said"),
    [
        ("primer", "systems.cab  layers.primer\njobs.refit  items.DOOR\n"),
        ("barrier", "systems.chassis  layers.barrier\njobs.refit  items.STEP\n"),
        ("systems.cab", "jobs.refit  items.DOOR\n"),
        ("sand-steel", "jobs.refit  items.DOOR, items.STEP\n"),
        ("refit", "Nothing uses refit.\n"),
        ("table:materials", "jobs.refit  substrate.material\n"),
    ],
)
def test_uses(asked: str, said: str, capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["where-used", asked, "--path", GOOD]) == 0
    assert capsys.readouterr().out == said


def test_what_is_based_on_a_record_is_told(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    copytree(GOOD, tmp_path / "specs")
    (tmp_path / "specs" / "more.yaml").write_text("systems: [{id: twin, based_on: cab}, {id: third, based_on: twin}]")
    assert main(["where-used", "cab", "--path", str(tmp_path / "specs")]) == 0
    assert capsys.readouterr().out == "jobs.refit  items.DOOR\nsystems.twin  based_on\nsystems.third  based_on\n"


def test_a_table_reaches_products_systems_and_jobs(capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["where-used", "table:binder_families", "--path", GOOD]) == 0
    lines = capsys.readouterr().out.splitlines()
    assert [line.partition("  ")[0] for line in lines] == [
        "products.primer", "products.base", "products.clear", "products.barrier", "systems.cab", "jobs.refit", "systems.chassis",
    ]  # fmt: skip


@pytest.mark.parametrize(
    ("asked", "said"),
    [
        ("primr", "specgen: there is no source 'primr'; nearest: primer"),
        ("table:material", "specgen: there is no table 'material'; nearest: materials"),
        ("../x", "specgen: there is no source '../x'"),
    ],
)
def test_unknown(asked: str, said: str, capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["where-used", asked, "--path", GOOD]) == 2
    assert capsys.readouterr().err.startswith(said)


def test_an_id_of_two_sources_is_asked_back(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    for file in Path(GOOD).iterdir():
        text = (
            file.read_text("utf-8")
            .replace("id: sand-steel", "id: cab")
            .replace("preparation: sand-steel", "preparation: cab")
        )
        (tmp_path / file.name).write_text(text, "utf-8")
    assert main(["where-used", "cab", "--path", str(tmp_path)]) == 2
    assert "name it in full: preparations.cab, systems.cab" in capsys.readouterr().err


WATERWORKS = str(Path(__file__).parents[2] / "specs_demo/waterworks")


@pytest.mark.parametrize("clause", ["record", "6.4"])
def test_uses_of_a_clause_of_the_customer(clause: str, capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["where-used", f"contract_documents.plant-painting.clauses.{clause}", "--path", WATERWORKS]) == 0
    assert capsys.readouterr().out == (
        "jobs.pump-guards  met as stated, jobs.pump-guards.inspection.total-film\njobs.pump-frames  met as stated\n"
    )


def test_a_clause_that_is_not_there_is_told_with_those_that_are(capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["where-used", "contract_documents.plant-painting.clauses.9.9", "--path", WATERWORKS]) != 0
    assert "plant-painting has no clause '9.9'; it has zinc (3.2), steel (3.3)" in capsys.readouterr().err
