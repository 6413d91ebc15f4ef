"""What the words of a stated protection mean: breathing air asked for, refused, or one way beside a filter."""

from __future__ import annotations

import pytest

from specgen.facts.product.declared import is_air_fed, is_type_a, names_air_fed, spraying, wet_work
from specgen.model.hazards import Task
from tests.good_spec import good_with, spec_of

# words, air-fed is what is asked for first, air-fed is named at all
WORDS = [
    ("air-fed half mask, EN 14594", True, True),
    ("air-fed half mask, EN 14594; half mask A2P3 for clearing up", True, True),
    ("half mask A2P3, EN 14387; air-fed half mask in a pit", False, True),
    ("half mask A2P3 or air-fed mask", False, True),
    ("half mask A2P3, not air-fed", False, False),
    ("full mask, no supplied air needed", False, False),
    ("supplied air without air line coupling", False, False),
    ("half mask A2P3, EN 14387", False, False),
    ("", False, False),
]


@pytest.mark.parametrize(("text", "first", "named"), WORDS)
def test_breathing_air_is_asked_for_or_named(text: str, first: bool, named: bool) -> None:
    assert (is_air_fed(text), names_air_fed(text)) == (first, named)


@pytest.mark.parametrize(
    ("text", "meant"),
    [("half mask A2P3", True), ("A2B2E2K1-P3", True), ("half mask AXP3", False), ("AX or A2P3", False), ("P3", False)],
)
def test_a_filter_of_type_a_is_none_of_type_ax(text: str, meant: bool) -> None:
    assert is_type_a(text) is meant


def test_protection_holds_at_its_own_task_and_where_it_names_any() -> None:
    entries = ", ".join(f"{{id: {task}, task: {task}, eyes: goggles}}" for task in Task)
    hazards = spec_of(good_with({"products.primer.hazards.protection": f"[{entries}]"})).products["primer"].hazards
    assert hazards is not None
    assert [entry.id for entry in spraying(hazards)] == ["spraying", "any"]
    assert [entry.id for entry in wet_work(hazards)] == ["mixing", "spraying", "clean-up", "any"]
