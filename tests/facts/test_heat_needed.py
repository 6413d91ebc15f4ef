"""The heat that a film needs which cures by heat alone, in the words of a scope."""

from __future__ import annotations

import pytest

from tests.good_spec import checked, given, put

ONLY_IN_HEAT = [
    {"id": "hand", "stage": "dry-to-handle", "time": "8 h", "air": "15 degC"},
    {"id": "cure", "stage": "fully-cured", "time": "1 h", "air": "200 degC"},
]
IN_AIR_TOO = [*ONLY_IN_HEAT, {"id": "air", "stage": "fully-cured", "time": "7 days", "air": "15 degC"}]


def _told(scope: str, drying: list[dict[str, str]]) -> set[str]:
    spec = given("good")
    put(spec, "products.barrier.drying", drying)
    put(spec, "jobs.refit.scope", f"Doors and step. {scope}")
    return {finding.id for finding in checked(spec).report} & {"REL008", "REL009", "JOB015"}


@pytest.mark.parametrize(
    "scope",
    [
        "Warmed in the oven to 100 °C for 30 min, then held at 200 °C for 1 h.",
        "Cured in the oven at 200 °C for 1 h.",
        "Cured in the oven at 200 °C.",
        "The step may be heated to 180 °C in service; it is cured at 200 °C for 1 h.",
    ],
)
def test_heat_that_cures_it_is_not_told(scope: str) -> None:
    assert not _told(scope, ONLY_IN_HEAT)


@pytest.mark.parametrize(
    "scope",
    [
        "Cured in the oven at 120 °C for 1 h.",
        "Cured in the oven at 200 °C for 20 min.",
        "The step is held at 150 °C for 2 hours.",
    ],
)
def test_less_heat_is_told_where_nothing_else_cures_it(scope: str) -> None:
    assert _told(scope, ONLY_IN_HEAT) == {"REL009"}
    assert not _told(scope, IN_AIR_TOO)


def test_no_heat_at_all_is_told() -> None:
    assert _told("The film cures in the air of the hall within a week and needs no heat.", ONLY_IN_HEAT) == {"JOB015"}
    assert not _told("The film cures in the air of the hall within a week and needs no heat.", IN_AIR_TOO)
