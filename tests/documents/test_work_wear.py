"""What is worn for cleaners, thinners and the dust of the bare part: one answer in the tables and at the steps."""

from __future__ import annotations

from collections.abc import Callable

import pytest

from specgen.documents.context import Context
from specgen.documents.job_card.view import job_card
from specgen.documents.method_statement.merged_safety import merged_safety
from specgen.documents.method_statement.view import method_statement
from specgen.documents.parts.caution_catalogue import SHEET_FIRST
from specgen.documents.parts.protection import protection
from specgen.documents.parts.step_cautions import at_steps
from specgen.documents.parts.wording import Words
from specgen.documents.parts.work_wear import wear_for_cleaners, work_wear
from specgen.model.job import Job
from specgen.model.spec import Spec
from specgen.units.locale import ENGLISH
from tests.documents.conftest import context
from tests.good_spec import good_with, spec_of

CLEANER = "{id: wipe, what: panel cleaner, amount: 1 L, kind: cleaner, statements: [H225]%s}"
CLEANER_ALONE = "{id: other, what: tar remover, amount: 1 L, kind: cleaner}"
THINNER = "{id: thin, what: slow thinner, amount: 1 L, kind: thinner, statements: [H226]%s}"
STATED = "butyl, 0.7 mm"


def job_with(*supplies: str) -> tuple[Spec, Words]:
    spec = spec_of(good_with({"jobs.refit.consumption.supplies": f"[{', '.join(supplies)}]"}))
    return spec, Words.of(spec.project, ENGLISH)


def hands(spec: Spec, words: Words, task: str) -> list[tuple[str, str]]:
    rows = protection(list(spec.products.values()), words, work_wear(spec.jobs["refit"], spec, words)).rows
    return [(row[1], row[3]) for row in rows if row[0] == task]


def test_gloves_stated_for_a_cleaner_stand_in_place_of_usual_practice() -> None:
    spec, words = job_with(CLEANER % f', gloves: "{STATED}"')
    assert hands(spec, words, "Surface preparation") == [("panel cleaner", STATED)]
    assert wear_for_cleaners(spec.jobs["refit"], words) == f"Wear: Hands: {STATED} (panel cleaner)."


def test_the_mask_of_a_cleaner_is_said_at_the_step_as_in_the_tables() -> None:
    spec, words = job_with(CLEANER.replace("H225", "H225, H336") % f', gloves: "{STATED}"', CLEANER_ALONE)
    rows = protection(list(spec.products.values()), words, work_wear(spec.jobs["refit"], spec, words)).rows
    masks = {row[1]: row[2] for row in rows if row[0] == "Surface preparation"}
    mask = masks["panel cleaner"]
    assert mask == "mask not stated: before starting, look it up in section 8 of its safety data sheet"
    said = wear_for_cleaners(spec.jobs["refit"], words)
    assert said.startswith(f"Wear: Respiratory: {mask} (panel cleaner); Hands: {STATED} (panel cleaner); nitrile")
    assert said.count(mask) == 1


def test_a_cleaner_without_gloves_has_those_of_usual_practice_beside_one_that_states_them() -> None:
    spec, words = job_with(CLEANER % f', gloves: "{STATED}"', CLEANER_ALONE)
    told = dict(hands(spec, words, "Surface preparation"))
    assert told["panel cleaner"] == STATED
    assert "nitrile" in told["tar remover"]
    assert "common practice" in told["tar remover"]


def test_without_cleaners_usual_practice_stays() -> None:
    spec, words = job_with()
    ((_, usual),) = hands(spec, words, "Surface preparation")
    assert "nitrile" in usual
    assert wear_for_cleaners(spec.jobs["refit"], words) == ""


@pytest.mark.parametrize(("stated", "told"), [(f', gloves: "{STATED}"', STATED), ("", "not stated")])
def test_a_thinner_has_a_row_at_mixing(stated: str, told: str) -> None:
    spec, words = job_with(THINNER % stated)
    assert ("slow thinner", told) in hands(spec, words, "Mixing")


def test_the_bare_part_has_its_mask_and_products_keep_theirs() -> None:
    spec, words = job_with()
    rows = protection(list(spec.products.values()), words, work_wear(spec.jobs["refit"], spec, words)).rows
    sanding = {row[1]: row[2] for row in rows if row[0] == "Sanding"}
    assert "P2 or P3" in sanding.pop("bare part")
    assert sanding == {
        row[1]: row[2] for row in protection(list(spec.products.values()), words).rows if row[0] == "Sanding"
    }


def test_table_and_step_of_a_method_statement_say_the_same() -> None:
    spec, words = job_with(CLEANER % f', gloves: "{STATED}"')
    job = spec.jobs["refit"]
    merged = merged_safety(spec.products_of(job), job, spec, words)
    assert merged is not None
    cells = next(row for row in merged.protection.rows if row[0] == "Surface preparation")
    assert cells[2] == f"panel cleaner: {STATED}"
    dusty = next(row for row in merged.protection.rows if row[0] == "Sanding")
    assert "bare part: P2 or P3" in dusty[1]
    assert dusty[2].endswith("bare part: gloves (common practice)")
    assert dusty[3].endswith("bare part: safety spectacles (common practice)")
    preparation = spec.preparation_of(job, job.items[0])
    assert preparation is not None
    gloves = wear_for_cleaners(job, words)
    said = at_steps(preparation, words, place=None, old_paint=False, cleaners=gloves)
    assert any(gloves in texts for texts in said)
    assert not any("nitrile gloves" in text for texts in said for text in texts)
    usual = at_steps(preparation, words, place=None, old_paint=False, cleaners="")
    assert any("nitrile gloves" in text for texts in usual for text in texts)


@pytest.mark.parametrize("view", [method_statement, job_card])
def test_gloves_for_a_cleaner_stand_at_the_step_that_uses_it(view: Callable[[Job, Context], object]) -> None:
    spec, words = job_with(CLEANER % f', gloves: "{STATED}"')
    job = spec.jobs["refit"]
    assert wear_for_cleaners(job, words) in repr(view(job, context(spec)))


def test_a_thinner_without_hazards_is_told_so_among_the_products_of_a_method_statement() -> None:
    spec, words = job_with("{id: thin, what: slow thinner, amount: 1 L, kind: thinner}")
    job = spec.jobs["refit"]
    merged = merged_safety(list(spec.products_of(job)), job, spec, words)
    assert merged is not None
    rows = [row for row in merged.products.rows if "slow thinner" in row]
    assert [row[-2:] for row in rows] == [("not stated", words(SHEET_FIRST))]
