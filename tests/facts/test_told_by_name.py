"""A sentence that a rule of its own tells is not told again by the tables of words; all others beside it still are."""

from __future__ import annotations

import pytest

from tests.good_spec import checked, given, put

BY_TABLE = {"JOB015", "JOB018", "JOB019", "AIR013"}


def _told(changes: dict[str, object], name: str = "good") -> list[str]:
    spec = given(name)
    for path, value in changes.items():
        put(spec, path, value)
    return [finding.id for finding in checked(spec).report]


@pytest.mark.parametrize(
    ("path", "text", "rule"),
    [
        ("jobs.refit.scope", "Doors and step; a gas heater warms the bay.", "AIR011"),
        ("jobs.refit.inspection.primer-film.if_failed", "Make the next coat thicker.", "INS026"),
        ("systems.cab.layers.primer.if_exceeded", "Wipe with solvent and coat; no sanding is needed.", "WIN005"),
    ],
)
def test_one_fault_is_told_once(path: str, text: str, rule: str) -> None:
    told = _told({path: text})
    assert rule in told
    assert BY_TABLE.isdisjoint(told)


def test_steel_wool_is_told_once_where_it_leaves_iron() -> None:
    """By its own rule on aluminium; on the steel it is made for by none."""
    brushed: dict[str, object] = {
        "preparations.sand-steel.steps.sand.text": "Brush with steel wool.",
        "preparations.sand-steel.steps.sand.medium": "nylon_web",
    }
    of_aluminium = {"jobs.refit.items.STEP.substrate": {"material": "aluminium", "thickness": "3 mm"}}
    assert "PRE004" in (told := _told(brushed | of_aluminium))
    assert BY_TABLE.isdisjoint(told)
    assert {"PRE004", *BY_TABLE}.isdisjoint(_told(brushed))


def test_what_stands_beside_it_is_told_by_the_tables() -> None:
    told = _told({"jobs.refit.scope": "Doors and step; a gas heater warms the bay; rags lie in a sack until Friday."})
    assert {"AIR011", "JOB018"} <= set(told)
    assert "JOB018" in _told({"jobs.refit.scope": "Doors and step; rags lie in a sack until Friday."})
