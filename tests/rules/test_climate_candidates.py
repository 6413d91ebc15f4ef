"""Each candidate for a rule on climate became one that finds its bad example and passes its good one, or stands with its reason."""

from __future__ import annotations

from pathlib import Path
from typing import Any

import pytest
import yaml

from tests.good_spec import found, given, good, put, take_out

CANDIDATES: dict[str, dict[str, Any]] = yaml.load(
    Path(__file__).with_name("climate_candidates.yaml").read_text("utf-8"), Loader=yaml.CSafeLoader
)
BUILT = {name: one for name, one in CANDIDATES.items() if "raises" in one}


def test_every_candidate_is_here_once_with_an_outcome() -> None:
    assert list(CANDIDATES) == [f"CL-{number:02}" for number in range(1, 46)]
    assert all(("raises" in one) != bool(one.get("why_not")) for one in CANDIDATES.values())


def raised(candidate: dict[str, Any], side: str) -> set[str]:
    spec = given(candidate["given"]) if "given" in candidate else good()
    for path in candidate.get("without", ()) if side == "bad" else ():
        take_out(spec, path)
    for path, value in candidate.get(side, {}).items():
        put(spec, path, value)
    return {rule for rule, _ in found(spec)}


@pytest.mark.parametrize("name", BUILT)
def test_the_bad_example_is_told(name: str) -> None:
    assert set(BUILT[name]["raises"]) <= raised(BUILT[name], "bad")


@pytest.mark.parametrize("name", [name for name, one in BUILT.items() if "ok" in one])
def test_the_good_example_passes(name: str) -> None:
    assert not set(BUILT[name]["raises"]) & raised(BUILT[name], "ok")
