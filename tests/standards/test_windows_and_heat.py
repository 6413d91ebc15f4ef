"""Recoat windows at their temperatures, dry heat from both sides of the conflict, and single figures."""

from __future__ import annotations

from fractions import Fraction
from itertools import pairwise

import pytest

from specgen.standards.tables import table


@pytest.mark.cases("recoat_windows")
def test_window(case: dict[str, str]) -> None:
    wanted = {
        "under": case["under"],
        "over": case["over"],
        "surface_from_C": case["from_C"],
        "surface_to_C": case["to_C"],
        "least_h": case["least_h"],
        "most_h": case["most_h"],
        "basis": case["basis"],
    }
    found = [{key: row[key] for key in wanted} for row in table("recoat_windows").rows]
    assert found.count(wanted) == 1


def test_warmer_surface_never_has_the_longer_window() -> None:
    rows = [row for row in table("recoat_windows").rows if row["surface_from_C"]]
    assert len(rows) == 6
    for cool, warm in pairwise(rows):
        assert int(warm["surface_from_C"]) == int(cool["surface_to_C"]) + 1
        assert Fraction(warm["least_h"]) <= Fraction(cool["least_h"])
        assert Fraction(warm["most_h"]) <= Fraction(cool["most_h"])


def test_window_opens_before_it_closes() -> None:
    both = [row for row in table("recoat_windows").rows if row["least_h"] and row["most_h"]]
    assert len(both) == 8
    assert all(Fraction(row["least_h"]) < Fraction(row["most_h"]) for row in both)


def test_window_of_the_epoxy_primer_has_a_time_of_grace() -> None:
    row = table("recoat_windows").row("id", "epoxy_primer_pu")
    assert [row[key] for key in ("at_C", "least_h", "most_h", "grace_to_h", "basis")] == [
        "24",
        "5",
        "8",
        "24",
        "secondary",
    ]
    assert row["in_grace"] == "solvent wipe, or scuff with P320 to P400"
    assert row["when_late"] == "scuff; a solvent wipe alone is not enough"


@pytest.mark.parametrize(
    ("id", "late"),
    [
        ("epoxy_any", "fog coat of 50 µm WFT, left to tack for 4 h, then the full coat"),
        ("pu_pu_22", "remove the gloss with P150 to P200"),
        ("pu_aged", "abrade and prime again, or apply a tie coat"),
        ("basecoat_clear", "abrade and reapply the basecoat"),
    ],
)
def test_what_to_do_when_late(id: str, late: str) -> None:
    assert table("recoat_windows").row("id", id)["when_late"] == late


@pytest.mark.cases("dry_heat")
def test_dry_heat_of_the_first_side(case: dict[str, str]) -> None:
    rows = [
        (row["most_C"], row["basis"])
        for row in table("dry_heat_limits").rows
        if (row["family"], row["paint"], row["side"], row["duration"])
        == (case["family"], case["paint"], "A", "continuous")
    ]
    assert rows == [(case["most_C"], case["basis"])]


@pytest.mark.cases("heat_conflicts")
def test_both_sides_on_dry_heat(case: dict[str, str]) -> None:
    for side in ("a", "b"):
        rows = [
            (row["most_C"], row["basis"])
            for row in table("dry_heat_limits").rows
            if (row["family"], row["paint"], row["side"], row["duration"])
            == (case["family"], "", side.upper(), "continuous")
        ]
        assert rows == [(case[f"{side}_most_C"], case[f"{side}_basis"])]


@pytest.mark.cases("figures")
def test_figure(case: dict[str, str]) -> None:
    row = table(case["table"]).row(case["key_column"], case["key"])
    assert (row[case["column"]], row["basis"]) == (case["value"], case["basis"])


def test_salt_per_rise_of_conductivity_follows_from_the_constants() -> None:
    value = {row["what"]: Fraction(row["value"]) for row in table("salt_measurement").rows}
    for millilitres in (15, 10):
        # kg/(m2 S) x mL / mm2 is mg/m2 per µS/cm once: 1 mL / 1 mm2 = 1 m, 1 µS/cm = 1e-4 S/m, 1 kg = 1e6 mg
        worked = value["c for mixed salts"] * millilitres / value["patch area"] * Fraction(1, 10_000) * 1_000_000
        assert worked == value[f"{millilitres} mL on the patch"]
