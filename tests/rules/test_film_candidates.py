"""Every candidate of the reference on film thickness and its inspection is a rule, a fault of readings, or refused with a reason."""

from __future__ import annotations

from pathlib import Path
from typing import Any

import pytest
import yaml

from specgen.report.explanations import explanations

CANDIDATES: dict[str, dict[str, Any]] = yaml.safe_load(
    Path(__file__).with_name("film_candidates.yaml").read_text("utf-8")
)


def test_all_forty_five_are_answered() -> None:
    assert list(CANDIDATES) == [f"FT-{number:02d}" for number in range(1, 46)]


@pytest.mark.parametrize("id", CANDIDATES)
def test_what_answers_a_candidate_has_a_page(id: str) -> None:
    held = CANDIDATES[id]
    rules = held.get("rules", [])
    assert rules or held.get("reason"), f"{id} has neither a rule nor a reason"
    assert set(held) <= {"rules", "reason"}
    unknown = [rule for rule in rules if rule not in explanations()]
    assert not unknown, f"{id} names {unknown}, which have no page"
