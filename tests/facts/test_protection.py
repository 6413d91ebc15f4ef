"""What is worn at a task, and which duties the law of the place adds."""

from __future__ import annotations

import pytest

from specgen.facts.product.duties import duties_of
from specgen.facts.product.protection import USUAL, usual_needs, worn, worn_at
from specgen.model.hazards import Task
from specgen.model.product import Product
from specgen.standards.tables import table
from tests.good_spec import good_with, spec_of


def _product(id: str, changes: dict[str, str]) -> Product:
    return spec_of(good_with(changes)).products[id]


def test_what_is_worn_at_spraying_isocyanate_stays_on_at_clearing_up() -> None:
    clear = _product("clear", {})
    (spraying,), (clearing,) = worn_at(clear, Task.SPRAYING), worn_at(clear, Task.CLEAN_UP)
    assert clearing.respiratory == spraying.respiratory == "air-fed half mask, EN 14594"
    assert worn_at(clear, Task.SANDING) == ()


@pytest.mark.parametrize("task", ["clean-up", "any"])
def test_a_product_that_speaks_of_clearing_up_is_taken_at_its_word(task: str) -> None:
    own = {"products.clear.hazards.protection.after": f"{{id: after, task: {task}, gloves: 'nitrile, EN ISO 374-1'}}"}
    (clearing,) = worn_at(_product("clear", own), Task.CLEAN_UP)
    assert clearing.gloves == "nitrile, EN ISO 374-1"
    assert clearing.respiratory is None


def test_without_isocyanate_nothing_is_carried_on() -> None:
    primer = _product("primer", {})
    assert worn_at(primer, Task.CLEAN_UP) == ()
    # a surfacer may hold isocyanate: what is not known counts as held
    assert worn_at(_product("primer", {"products.primer.binder": "surfacer_2k"}), Task.CLEAN_UP) != ()
    assert worn(primer.model_copy(update={"hazards": None})) == ()


def test_usual_practice_comes_from_its_table() -> None:
    needs = {row["id"]: row["need"] for row in table("protective_equipment").rows}
    assert usual_needs(Task.SANDING) == (needs["breath_sanding"], needs["gloves_dust"], needs["eyes_dust"])
    assert usual_needs(Task.CLEAN_UP) == ("", needs["gloves_splash"], "")
    assert usual_needs(Task.MIXING) == usual_needs(Task.SPRAYING) == ("", "", "")
    assert set(USUAL) == {Task.PREPARATION, Task.SANDING, Task.SPRAYING, Task.CLEAN_UP}


@pytest.mark.parametrize(
    ("product", "changes", "duties"),
    [
        ("clear", {}, ["eu_training"]),
        ("clear", {"products.clear.hazards.isocyanates": "{monomer_at_limit: no}"}, []),
        ("clear", {"project.users": "public"}, []),
        ("clear", {"project.jurisdictions": "[GB, US]"}, ["gb_surveillance", "gb_monitoring", "us_supplied_air"]),
        ("primer", {}, []),
        ("primer", {"project.jurisdictions": "[EU, DE]"}, ["de_epoxy"]),
        ("base", {"products.base.binder": "surfacer_2k", "project.jurisdictions": "[EU, DE]"}, []),
    ],
)
def test_duties_by_what_is_held_and_by_law(product: str, changes: dict[str, str], duties: list[str]) -> None:
    spec = spec_of(good_with(changes))
    assert [row["id"] for row in duties_of(spec.products[product], spec)] == duties
