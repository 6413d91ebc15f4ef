"""Our own words on hazards stand in one place, and none of them is forgotten."""

from __future__ import annotations

from pathlib import Path

from specgen.documents.parts.caution_catalogue import AT_STEPS, FILLED_IN, HURTS, PICTOGRAMS
from specgen.facts.product.dangers import STATEMENTS
from specgen.figures.pictograms import CODES
from specgen.model.hazards import Task
from specgen.standards.tables import table

CATALOGUE = Path(__file__).parents[2] / "templates/locale/specgen.pot"
# These name no hurt: one points to the safety data sheet, the other to the instructions.
NO_HURT = {"EUH210", "EUH401"}


def test_every_statement_hurts_in_one_line() -> None:
    assert set(HURTS) == set(STATEMENTS)
    listed = [code for codes in STATEMENTS.values() for code in codes]
    assert len(set(listed)) == len(listed)
    known = {row["id"] for name in ("h_statements", "euh_statements") for row in table(name).rows}
    assert set(listed) == known - NO_HURT


def test_every_pictogram_has_a_name() -> None:
    assert set(PICTOGRAMS) == set(CODES)


def test_every_task_of_the_work_has_a_caution() -> None:
    assert {caution.task for caution in AT_STEPS} == set(Task) - {Task.ANY}


def test_what_is_filled_in_is_open_in_the_official_wording() -> None:
    assert [code for code in FILLED_IN if "…" not in table("p_statements").row("id", code)["text"]] == []


def test_all_of_it_can_be_translated() -> None:
    shipped = CATALOGUE.read_text("utf-8")
    texts = [*(caution.text for caution in AT_STEPS), *HURTS.values(), *PICTOGRAMS.values()]
    assert [text for text in texts if f'msgid "{text}"' not in shipped] == []
