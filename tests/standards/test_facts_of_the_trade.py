"""Facts of the trade that the tables must not contradict; common practice, no source."""

from __future__ import annotations

from fractions import Fraction

import pytest

from specgen.standards.tables import table


@pytest.mark.cases("facts_of_the_trade")
def test_epoxy_stands_dry_heat_but_is_no_heat_resistant_coating(case: dict[str, str]) -> None:
    rows = [row for row in table("dry_heat_limits").rows if row["family"] == case["subject"]]
    (practice,) = [row for row in rows if row["side"] == "B" and row["duration"] == "continuous"]
    assert practice["basis"] == case["basis"]
    assert Fraction(case["least_C"]) <= Fraction(practice["most_C"]) <= Fraction(case["most_C"])
    # the highest continuous figure named for the plain kind lies in the same span
    plain = [Fraction(row["upper_C"]) for row in rows if row["paint"] == "by hardener"]
    assert plain == [121]
    heat = min(
        Fraction(row["most_C"])
        for row in table("dry_heat_limits").rows
        if row["family"] == "silicone_heat" and row["duration"] == "continuous"
    )
    assert Fraction(case["most_C"]) < heat / 2


@pytest.mark.cases("direct_to_metal")
def test_top_coat_may_go_direct_to_metal_where_the_product_says_so(case: dict[str, str]) -> None:
    (row,) = [
        row
        for row in table("substrate_coats").rows
        if (row["material"], row["family"]) == (case["material"], case["family"])
    ]
    assert "declared_dtm" in row["unless"].split(" or ")
    assert row["basis"] == case["basis"]
    (pair,) = [row for row in table("overcoat_matrix").rows if (row["new"], row["old"]) == ("pu", "bare_steel")]
    assert pair["verdict"] == "conditional"
    assert "declared_dtm" in pair["further_needs"].split(" or ")
    assert pair["further_basis"] == case["basis"]
