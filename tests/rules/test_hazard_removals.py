"""No hazard datum is lost unseen: each, taken out by itself, raises a finding or changes a caution that is printed."""

from __future__ import annotations

import copy
from collections.abc import Iterator
from functools import cache
from pathlib import Path
from typing import Any

import pytest
import yaml

from specgen.documents.label_sheet.view import label_sheet
from specgen.documents.parts.cautions import first_aid, hazards
from specgen.documents.parts.protection import protection
from specgen.documents.parts.wording import Words
from specgen.findings import Severity
from specgen.rules.declare import all_rules
from specgen.rules.run import run_rules
from specgen.units.locale import ENGLISH
from tests.documents.conftest import context
from tests.good_spec import DEMO_RANGE, ON, good, loaded

# How much of it a hardener lets off, and its number, are counted in the air of a job: the page of AIR003 takes both away.
ON_A_JOB = {"cure_release_cas", "cure_release_share"}
RULES = tuple(rule for rule in all_rules() if rule.id[:3] in {"HAZ", "AIR", "VOC"})


def _whole(folder: Path) -> dict[str, Any]:
    whole: dict[str, Any] = {}
    for file in sorted(folder.rglob("*.yaml")):
        for key, value in yaml.load(file.read_text("utf-8"), Loader=yaml.CBaseLoader).items():
            if isinstance(value, list):
                whole.setdefault(key, []).extend(value)
            else:
                whole[key] = value
    whole["project"].pop("logo", None)  # a file beside the sources, which are one text here
    sets = {one["id"]: one for one in whole.get("safety_sets", ())}
    for stated in (product["hazards"] for product in whole["products"] if "hazards" in product):
        # what is shared is taken out of each product that names it
        named = [sets[name] for name in stated.pop("safety_sets", ())]
        for block in ("protection", "first_aid", "cautions"):
            if held := [*(entry for one in named for entry in one.get(block, ())), *stated.get(block, ())]:
                stated[block] = copy.deepcopy(held)
    return whole


@cache
def _sources() -> dict[tuple[str, str], dict[str, Any]]:
    """Each product alone with its project: hazards hang on nothing else, not on what is claimed."""
    return {
        (name, product["id"]): {
            "project": source["project"],
            "products": [{key: held for key, held in product.items() if key != "claims"}],
        }
        | {sets: source[sets] for sets in ("safety_sets",) if sets in source}
        for name, source in (("good", good()), ("demo", _whole(DEMO_RANGE)))
        for product in source["products"]
    }


def _seen(source: dict[str, Any]) -> tuple[set[tuple[str, str, str]], str]:
    """The findings, and all that is printed of hazards."""
    held = loaded(source)
    found = {(f.id, f.path, f.what) for f in (*held.findings, *run_rules(held, ON, RULES))}
    if held.spec is None:
        return found, ""
    words = Words.of(held.spec.project, ENGLISH)
    products = list(held.spec.products.values())
    label = tuple(label_sheet(product, context(held.spec)) for product in products)
    return found, repr(
        (hazards(products, held.spec, words), protection(products, words), first_aid(products, words), label)
    )


def _data(node: Any, way: tuple[str | int, ...] = ()) -> Iterator[tuple[str | int, ...]]:
    """The way to every single value, and to every entry and record that holds some."""
    if way:
        yield way
    if isinstance(node, dict):
        for key, value in node.items():
            if key != "id":
                yield from _data(value, (*way, key))
    elif isinstance(node, list):
        for number, value in enumerate(node):
            yield from _data(value, (*way, number))


def _without(source: dict[str, Any], way: tuple[str | int, ...]) -> dict[str, Any]:
    changed = copy.deepcopy(source)
    owner: Any = changed["products"][0]["hazards"]
    for step in way[:-1]:
        owner = owner[step]
    del owner[way[-1]]
    return changed


@pytest.mark.parametrize("key", list(_sources()), ids=lambda key: "-".join(key))
def test_nothing_is_lost_unseen(key: tuple[str, str]) -> None:
    source = _sources()[key]
    held = loaded(source)
    found = [f for f in (*held.findings, *run_rules(held, ON, RULES)) if f.severity is not Severity.NOTE]
    assert found == [], "the product is whole and clean to begin with"
    before, printed = _seen(source)
    unseen = []
    ways = list(_data(source["products"][0]["hazards"]))
    assert len(ways) > 20
    for way in ways:
        after, left = _seen(_without(source, way))
        if not after - before and left == printed:
            unseen.append(".".join(map(str, way)))
    assert set(unseen) - ON_A_JOB == set()
