"""Figures of the tables on hazards, each with how well it is confirmed, and how many rows each table has."""

from __future__ import annotations

import pytest

from specgen.standards.citations import Basis
from specgen.standards.tables import table

COUNTS = {
    "acute_toxicity": 20,
    "aerosol_criteria": 8,
    "aerosol_exclusions": 9,
    "clearance_times": 3,
    "euh_triggers": 8,
    "exposure_laws": 28,
    "exposure_limits": 608,
    "filters": 6,
    "hazard_classes": 19,
    "heat_of_combustion": 48,
    "isocyanate_duties": 15,
    "label_elements": 57,
    "mixture_limits": 38,
    "newer_class_limits": 8,
    "physical_data": 155,
    "physical_left_out": 15,
    "physical_sources": 7,
    "pictogram_precedence": 6,
    "protective_equipment": 12,
    "redundant_statements": 4,
    "storage_limits": 11,
    "transport_notes": 15,
    "transport_numbers": 10,
    "waste_codes": 10,
}


@pytest.mark.parametrize(("name", "count"), COUNTS.items())
def test_table_is_whole(name: str, count: int) -> None:
    assert len(table(name).rows) == count


@pytest.mark.cases("hazard_figures")
def test_figure_with_its_basis(case: dict[str, str]) -> None:
    row = table(case["table"]).row(case["column"], case["key"])
    assert row[case["cell"]] == case["value"]
    assert table(case["table"]).row_citation(row).basis is Basis[case["basis"]]


WEAKER = {"SEEN": {Basis.PUBLISHED, Basis.REGULATION}, "MEMORY": {Basis.MEMORY}, "PRACTICE": {Basis.PRACTICE}}


@pytest.mark.cases("hazard_figures")
def test_no_figure_claims_more_than_its_mark(case: dict[str, str]) -> None:
    withheld = "address withheld" in case["document"]
    allowed = {Basis.SECONDARY} if withheld else WEAKER.get(case["mark"], {Basis.ARITHMETIC})
    assert Basis[case["basis"]] in allowed


def test_every_filter_entry_says_on_which_side_of_the_boiling_point_it_stands() -> None:
    limits = {row["type"]: (row["boiling_over"], row["boiling_up_to"]) for row in table("filters").rows}
    assert (limits["A"], limits["AX"]) == (("65", ""), ("", "65"))
