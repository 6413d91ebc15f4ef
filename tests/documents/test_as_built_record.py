"""The as-built record says what is open and what was done, by the records that the demo keeps."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace
from datetime import date
from pathlib import Path

import pytest

from specgen.assessing.as_built import Built, assessed, open_of
from specgen.assessing.kept import kept_of
from specgen.documents.as_built_record.view import AsBuiltRecord, as_built_record
from specgen.model.parse import load
from specgen.register.people import People, people_of
from tests.documents.conftest import context
from tests.documents.test_golden import GOLDEN, _lines
from tests.good_spec import DEMO

DAY = date(2026, 11, 27)


@pytest.fixture(scope="module")
def built() -> Built:
    return _built("tower-wagon-doors")


@pytest.fixture(scope="module")
def going_on() -> Built:
    return _built("guard-rails")


def _built(key: str) -> Built:
    spec = load(DEMO).spec
    assert spec is not None
    job = spec.jobs[key]
    kept, people = kept_of(job, DEMO, spec), people_of(DEMO)
    found = assessed(job, spec, kept, people, DAY)
    return Built(found, open_of(job, spec, found, kept, people), people)


def _view(built: Built) -> AsBuiltRecord:
    spec = load(DEMO).spec
    assert spec is not None
    return as_built_record(built, context(spec, day=DAY))


def test_the_texts_are_as_expected(built: Built, golden: Callable[[Path, str], None]) -> None:
    golden(GOLDEN / "as_built_record.txt", "\n".join(_lines(_view(built), "")) + "\n")


def test_what_is_open_stands_on_the_first_page(going_on: Built) -> None:
    view = _view(going_on)
    assert (view.number, view.released) == ("AB-MS-3134", False)
    assert view.answer.startswith("NOT RELEASED")
    told = [row[:2] for row in _texts(view.missing.rows)]
    assert ("RAIL-LONG", "nobody has released it") in told
    assert len(told) == len(going_on.open)
    assert [row[1] for row in _texts(view.items.rows)] == ["DOES NOT CONFORM", "NOT DECIDED"]


def test_nothing_open_is_released(built: Built) -> None:
    view = _view(built)
    assert (view.released, view.answer, list(view.missing.rows)) == (True, "RELEASED", [])
    assert view.conceded == "Concessions of this job: 1; in force: 1; used here: 1."
    assert [row[1] for row in _texts(view.items.rows)] == ["conforms", "conforms under a concession", "conforms"]


def test_work_batches_and_files_are_those_of_the_records(built: Built) -> None:
    view = _view(built)
    sanding = next(row for row in _texts(view.work.rows) if row[1] == "sanding")
    assert sanding[:3] == ("2026-11-18 08:15 to 09:40", "sanding", "all items")
    # what was painted in one go, a repair of one part, and a release stand in a row each
    when = {(row[1], row[2]): row[0] for row in _texts(view.work.rows)}
    assert when["application", "all items"] == "2026-11-18 11:25 to 13:10"
    assert when["repair", "LADDER, part 2"] == "2026-11-25 13:20"
    assert when["release", "DOOR"] == "2026-11-24 15:30"
    assert {row[3] for row in _texts(view.batches.rows)} == {
        "P210-2641",
        "S230-1187",
        "S230-1192",
        "T410-0932",
        "T410-0951",
    }
    assert {row[1] for row in _texts(view.instruments.rows)} == {"K-20714"}
    assert [row[1] for row in _texts(view.files.rows)] == [digest for _, digest in built.found.files]


def test_a_person_who_was_erased_is_told_by_the_id_alone(built: Built) -> None:
    named = {row[0]: row[1] for row in _texts(_view(built).persons.rows)}
    assert named == {"ka": "K. Aldermoor", "bt": "B. Tennick", "em": "not stated", "rh": "R. Halvorsen"}
    erased = _texts(_view(replace(built, people=People())).persons.rows)
    assert [row[0] for row in erased] == list(named)
    assert not any(text for row in erased for text in row[1:])


def _texts(rows: object) -> list[tuple[str, ...]]:
    return [tuple(str(getattr(cell, "text", cell)) for cell in getattr(row, "cells", row)) for row in rows]  # type: ignore[attr-defined]
