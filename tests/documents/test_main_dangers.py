"""The dangers on the first page of a method statement: by the facts of the hazard card, and none that could be lost unseen."""

from __future__ import annotations

import re

import pytest

from specgen.documents.method_statement.main_dangers import main_dangers
from specgen.documents.method_statement.view import method_statement
from specgen.documents.parts.wording import Words
from specgen.model.spec import Spec
from specgen.rendering.environment import fill
from specgen.units.locale import ENGLISH
from tests.documents.conftest import context
from tests.good_spec import good_with, spec_of

AIR_FED = "Spray mist can cause permanent asthma: wear air-fed breathing apparatus where isocyanate is in it."
FLAMES = "Fire hazard: no flames, sparks or smoking within reach of spray or vapour."


def _dangers(changes: dict[str, str]) -> tuple[str, ...]:
    spec = spec_of(good_with(changes))
    return main_dangers(list(spec.products_of(spec.jobs["refit"])), spec.jobs["refit"], Words.of(spec.project, ENGLISH))


def _first_page(spec: Spec) -> str:
    view = method_statement(spec.jobs["refit"], context(spec))
    page = fill(
        "method_statement/document.html.j2", language="en", medium="print", view=view, draft=True, identity=None
    )
    return re.sub(r"\s+", " ", re.sub(r"<[^>]+>", "", page.split("Job at a glance")[0]))


def test_isocyanate_is_named_with_its_product_and_fire_for_all() -> None:
    assert _dangers({}) == (f"Example clear: {AIR_FED}", FLAMES)


def test_isocyanate_stands_there_without_any_statement() -> None:
    silent = {"products.clear.hazards.statements": "[H226]", "products.clear.hazards.supplemental": "[]"}
    assert f"Example clear: {AIR_FED}" in _dangers(silent)


def test_a_danger_of_a_cleaner_is_named_with_it() -> None:
    supplies = "[{id: wipe, what: panel cleaner, amount: 1 L, kind: cleaner, statements: [H225, H331]}]"
    told = _dangers({"jobs.refit.consumption.supplies": supplies})
    assert told[0] == "panel cleaner: Toxic: keep away from mouth, skin, eyes and lungs."
    assert told[1:] == (f"Example clear: {AIR_FED}", FLAMES)


def test_what_may_hold_isocyanate_counts_as_holding_it() -> None:
    # of this family some do and some do not
    unsaid = {"products.barrier.binder": "surfacer_2k"}
    assert _dangers(unsaid)[0] == f"Example clear, Example barrier: {AIR_FED}"


@pytest.mark.parametrize("text", [f"Example clear: {AIR_FED}", FLAMES])
def test_they_stand_on_the_first_page(text: str) -> None:
    assert text in _first_page(spec_of(good_with({})))
