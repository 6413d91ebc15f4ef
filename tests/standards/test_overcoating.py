"""New coat over old coat: every cell of the matrix and of the matrix by binder code, against its source."""

from __future__ import annotations

from collections import Counter

import pytest

from specgen.standards.tables import Row, table


def _pair(new: str, old: str, state: str) -> list[Row]:
    return [row for row in table("overcoat_matrix").rows if (row["new"], row["old"], row["state"]) == (new, old, state)]


@pytest.mark.cases("overcoat_cells")
def test_cell_is_as_in_its_source(case: dict[str, str]) -> None:
    (row,) = _pair(case["new"], case["old"], case["state"])
    wanted = ("verdict", "mechanisms", "document", "basis")
    assert [row[column] for column in wanted] == [case[column] for column in wanted]


@pytest.mark.cases("overcoat_blank")
def test_pair_without_a_statement_stays_without(case: dict[str, str]) -> None:
    assert _pair(case["new"], case["old"], case["state"]) == []


def test_verdicts_are_counted() -> None:
    counts = Counter(row["verdict"] for row in table("overcoat_matrix").rows)
    assert counts == {"accepted": 52, "conditional": 92, "not recommended": 100, "same material": 6}


def test_refusals_that_can_carry_an_error() -> None:
    rows = [row for row in table("overcoat_matrix").rows if row["verdict"] == "not recommended"]
    assert sum(table("overcoat_matrix").row_citation(row).basis.confirmed for row in rows) == 22


def test_only_the_reading_of_the_pair_is_published() -> None:
    assert {row["reading"] for row in table("overcoat_matrix").rows if row["basis"] == "published"} == {"pair"}


def test_both_sides_of_a_conflict_are_kept() -> None:
    rows = [row for row in table("overcoat_matrix").rows if row["other_verdict"]]
    assert {(row["new"], row["old"], row["verdict"], row["other_verdict"]) for row in rows} == {
        ("epoxy", "acrylic_1k", "not recommended", "accepted"),
        ("pu", "acrylic_1k", "not recommended", "accepted"),
        ("epoxy", "galvanized", "accepted", "not recommended"),
        ("epoxy", "wash_primer", "conditional", "not recommended"),
        ("epoxy", "oil_alkyd", "conditional", "not recommended"),
        ("pu", "oil_alkyd", "conditional", "not recommended"),
        ("vinyl_or_cr", "oil_alkyd", "conditional", "not recommended"),
    }
    assert {row["reading"] for row in rows} == {"conflict"}
    assert all(row["other_document"] and row["remark"] for row in rows)


def test_part_of_a_need_that_is_not_published_stands_apart() -> None:
    rows = [row for row in table("overcoat_matrix").rows if row["further_needs"]]
    assert [(row["new"], row["old"], row["basis"], row["further_needs"], row["further_basis"]) for row in rows] == [
        ("acrylic_wb", "bare_steel", "published", "inhibiting_primer", "memory"),
        ("epoxy", "bare_steel", "published", "spot_grade", "practice"),
        ("pu", "bare_steel", "published", "primer_first or declared_dtm", "practice"),
    ]


def test_what_is_taken_like_its_kin_is_so_by_practice_only() -> None:
    rows = [row for row in table("overcoat_groups").rows if row["id"] in {"epoxy", "pu"}]
    assert [(row["member"], row["basis"]) for row in rows] == [
        ("epoxy_2k", "logic"),
        ("epoxy_latent", "practice"),
        ("epoxy_phenolic", "practice"),
        ("pu_2k_aliphatic", "logic"),
        ("pu_2k_aromatic", "logic"),
        ("pu_latent", "practice"),
        ("fluoropolymer", "practice"),
        ("polyaspartic", "practice"),
    ]


def test_zinc_is_never_buried() -> None:
    over_paint = [row for row in table("overcoat_matrix").rows if row["mechanisms"] == "no_metal_contact"]
    assert {row["new"] for row in over_paint} == {"zinc_organic", "zinc_inorganic"}
    assert {row["verdict"] for row in over_paint} == {"not recommended"}
