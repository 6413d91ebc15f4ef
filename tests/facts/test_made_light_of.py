"""Sentences that leave out a precaution or excuse it: each row is told by wrong ones, and what a specifier rightly writes passes."""

from __future__ import annotations

from pathlib import Path
from typing import Any

import pytest
import yaml

from specgen.facts.job.circumstances import NAMES
from specgen.facts.job.made_light_of import passed_over
from specgen.facts.job.practices import small_letters_of
from specgen.standards.tables import table
from tests.needed_words import hides_nothing

SAID: dict[str, dict[str, list[str]]] = yaml.safe_load(
    Path(__file__).with_name("made_light_of.yaml").read_text("utf-8")
)
ROWS = [row for name in ("precautions", "excuses") for row in table(name).rows]


def _each(kind: str) -> list[tuple[str, str]]:
    return [(row, text) for row, said in SAID.items() for text in said[kind]]


def test_every_row_has_its_sentences() -> None:
    assert SAID.keys() == {row["id"] for row in ROWS}
    assert all(said["wrong"] and said["sound"] for said in SAID.values())


@pytest.mark.parametrize(("row", "text"), _each("wrong"))
def test_wrong_sentence_is_told(row: str, text: str) -> None:
    assert row in dict(passed_over(text))


@pytest.mark.parametrize(("row", "text"), _each("sound"))
def test_sound_sentence_passes(row: str, text: str) -> None:
    assert passed_over(text) == ()


@pytest.mark.parametrize("denial", [row["id"] for row in table("denials").rows])
def test_every_denial_leaves_something_out(denial: str) -> None:
    said = {
        "no_need": "There is no need to rinse.",
        "without": "The tank is entered without permit.",
        "skip": "Skip the salt test.",
        "made_needless": "The new cleaner makes rinsing unnecessary.",
        "no_needed": "No rinsing is needed.",
        "left_out": "Rinsing may be left out.",
        "need_not": "Earthing of the drum need not be seen to.",
        "only_if": "Gloves only if somebody asks.",
        "if_time": "Rinsing if there is time.",
    }
    assert passed_over(said[denial])


@pytest.mark.parametrize("row", ROWS, ids=lambda row: row["id"])
def test_no_sentence_is_passed_over_for_its_stems(row: Any) -> None:
    assert hides_nothing(small_letters_of(row["words"]), row["stems"])


def test_circumstances_are_known() -> None:
    assert {name for row in ROWS for name in row["when"].split()} <= NAMES
