"""The published tables as shipped: each can be read, cites a document that is known, and none says more than its
basis.
"""

from __future__ import annotations

from fractions import Fraction

import pytest

from specgen.standards.citations import Basis, documents
from specgen.standards.tables import Row, table, table_names

COUNTS = {
    "comb_unfit_binders": 4,
    "dead_volume_by_profile_band": 4,
    "dead_volume_by_roughness": 6,
    "film_per_cross_coat": 5,
    "iso_12944_5_binders": 19,
    "iso_12944_5_immersion": 6,
    "iso_12944_5_systems": 61,
    "iso_19840_corrections": 3,
    "iso_19840_limits": 4,
    "iso_19840_readings": 6,
    "loss_ranges": 6,
    "reading_distance": 1,
    "solids_allowance": 1,
    "sspc_pa_2_areas": 5,
    "sspc_pa_2_levels": 5,
    "sspc_pa_2_readings": 2,
    "spreading_constants": 2,
    "transfer_efficiency_aerosol": 2,
    "transfer_efficiency_metal_furniture": 7,
    "transfer_efficiency_required": 1,
    "transfer_efficiency_small_parts": 2,
}

BASES = {
    "film_per_cross_coat": Basis.PRACTICE,
    "iso_12944_5_binders": Basis.MEMORY,
    "iso_12944_5_immersion": Basis.MEMORY,
    "iso_12944_5_systems": Basis.MEMORY,
    "iso_19840_readings": Basis.PUBLISHED,
    "solids_allowance": Basis.PRACTICE,
    "sspc_pa_2_levels": Basis.MEMORY,
    "transfer_efficiency_aerosol": Basis.PRACTICE,
    "transfer_efficiency_metal_furniture": Basis.REGULATION,
}


@pytest.mark.parametrize(("name", "count"), COUNTS.items())
def test_table_is_whole(name: str, count: int) -> None:
    assert len(table(name).rows) == count


@pytest.mark.parametrize(("name", "basis"), BASES.items())
def test_table_says_how_well_it_is_confirmed(name: str, basis: Basis) -> None:
    assert table(name).basis is basis


@pytest.mark.parametrize("name", table_names())
def test_table_cites_a_known_document_or_has_no_source(name: str) -> None:
    found = table(name)
    assert found.document in documents() if found.document else found.basis not in {Basis.PUBLISHED, Basis.REGULATION}
    assert str(found.citation).endswith(str(found.basis)) or str(found.citation).endswith(f"({found.basis})")
    assert all(tuple(row) == found.columns for row in found.rows)


@pytest.mark.parametrize("name", [name for name in COUNTS if "low_pct" in table(name).columns])
def test_ranges_run_upwards_within_bounds(name: str) -> None:
    for row in table(name).rows:
        assert 0 <= Fraction(row["low_pct"]) <= Fraction(row["high_pct"]) <= 100


def test_bands_of_the_profile_meet_without_a_gap() -> None:
    rows = table("dead_volume_by_profile_band").rows
    assert [row["from_um"] for row in rows[1:]] == [row["to_um"] for row in rows[:-1]]


def test_unknown_table_and_unknown_row_are_named() -> None:
    with pytest.raises(KeyError, match="there is no table moonlight"):
        table("moonlight")
    with pytest.raises(
        KeyError, match="table film_per_cross_coat has 0 rows with coat = mist; it has: cross coat from a can"
    ):
        table("film_per_cross_coat").row("coat", "mist")


def test_annex_b_is_the_same_one_category_up_and_one_durability_down() -> None:
    steps = ("low", "medium", "high", "very-high")
    cells = {(row["on"], row["paint"], row["corrosivity"], row["durability"]): row for row in _annex_b()}
    for (on, paint, corrosivity, durability), row in cells.items():
        if corrosivity == "C5" or durability == "low":
            continue
        harsher = f"C{int(corrosivity[1]) + 1}"
        other = cells[on, paint, harsher, steps[steps.index(durability) - 1]]
        assert (row["coats"], row["nominal_um"]) == (other["coats"], other["nominal_um"])


def _annex_b() -> tuple[Row, ...]:
    return table("iso_12944_5_systems").rows
