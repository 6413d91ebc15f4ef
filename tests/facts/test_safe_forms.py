"""What a sentence on a dangerous subject has to say: each row is told by wrong sentences, sound ones pass, and a role or a place counts."""

from __future__ import annotations

from pathlib import Path
from typing import Any

import pytest
import yaml

from specgen.facts.job.circumstances import NAMES
from specgen.facts.job.practices import small_letters_of
from specgen.facts.job.safe_forms import lacking
from specgen.model.product import Role
from specgen.standards.tables import table
from tests.needed_words import hides_nothing

SAID: dict[str, dict[str, list[str]]] = yaml.safe_load(Path(__file__).with_name("safe_forms.yaml").read_text("utf-8"))
ROWS: dict[str, Any] = {row["id"]: row for row in table("safe_forms").rows}


def _told(row: str, text: str) -> bool:
    return row in dict(lacking(text, ROWS[row]["where"] or "scope"))


def _each(kind: str) -> list[tuple[str, str]]:
    return [(row, text) for row, said in SAID.items() for text in said.get(kind, ())]


def test_every_row_has_its_sentences() -> None:
    assert SAID.keys() == ROWS.keys()
    assert all(said["wrong"] and said["sound"] for said in SAID.values())


@pytest.mark.parametrize(("row", "text"), _each("wrong"))
def test_wrong_sentence_is_told(row: str, text: str) -> None:
    assert _told(row, text)


@pytest.mark.parametrize(("row", "text"), _each("silent"))
def test_sentence_that_is_not_told_yet(row: str, text: str) -> None:
    assert not _told(row, text)


@pytest.mark.parametrize(("row", "text"), _each("sound"))
def test_sound_sentence_passes(row: str, text: str) -> None:
    assert not _told(row, text)


@pytest.mark.parametrize("row", [row for row in ROWS.values() if row["stems"]], ids=lambda row: row["id"])
def test_no_subject_is_passed_over_for_its_stems(row: Any) -> None:
    assert hides_nothing(small_letters_of(row["subject"]), row["stems"])


def test_circumstances_are_known() -> None:
    asked = {name for row in ROWS.values() for name in row["when"].split()}
    assert asked <= NAMES | {role.value for role in Role}
