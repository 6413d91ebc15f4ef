"""Preparation: grades and their ladder, least preparation by binder, profile, papers."""

from __future__ import annotations

from fractions import Fraction
from itertools import pairwise

import pytest

from specgen.facts.tests.profile_grade import grade_ranges
from specgen.standards.citations import Basis
from specgen.standards.tables import table
from specgen.units.quantity import parse_range


@pytest.mark.cases("grade_pairs")
def test_grades_taken_as_equal(case: dict[str, str]) -> None:
    row = table("preparation_equivalences").row("equals", case["equals"])
    assert (row["grade"], row["nearness"], row["document"], row["basis"]) == (
        case["id"],
        "near",
        case["document"],
        "published",
    )
    assert table("preparation_grades").row("id", case["equals"])["nace"] == case["nace"]


@pytest.mark.cases("ladder")
def test_level_of_a_grade(case: dict[str, str]) -> None:
    row = table("preparation_ladder").row("grade", case["id"])
    assert (row["level"], row["basis"]) == (case["level"], "practice")


@pytest.mark.cases("stain_shares")
def test_what_a_grade_leaves(case: dict[str, str]) -> None:
    row = table("preparation_grades").row("id", case["id"])
    found = [row[column] for column in ("stain_most_pct", "residue_most_pct", "profile_least_um")]
    assert found == [case["stain"], case["residue"], case["profile"]]


def test_ladder_rises_with_the_rank_in_each_series() -> None:
    level = {row["grade"]: int(row["level"]) for row in table("preparation_ladder").rows}
    series: dict[str, list[tuple[int, int]]] = {}
    for row in table("preparation_grades").rows:
        if row["rank"] and row["id"] in level:
            series.setdefault(row["series"], []).append((int(row["rank"]), level[row["id"]]))
    assert sorted(series) == [
        "ISO 8501-1 blast",
        "ISO 8501-1 tool",
        "ISO 8501-2 blast",
        "ISO 8501-2 machine",
        "ISO 8501-2 tool",
        "water jetting",
    ]
    for steps in series.values():
        ordered = sorted(steps)
        assert all(low[1] < high[1] for low, high in pairwise(ordered)), ordered


def test_ladder_starts_at_cleaning_and_has_no_gap() -> None:
    assert sorted({int(row["level"]) for row in table("preparation_ladder").rows}) == [0, 1, 2, 3, 4, 5, 6]


def test_less_stain_is_never_lower_on_the_ladder() -> None:
    level = {row["grade"]: int(row["level"]) for row in table("preparation_ladder").rows}
    blasts = ("SP 6", "SP 10", "SP 5")
    stains = [Fraction(table("preparation_grades").row("id", grade)["stain_most_pct"]) for grade in blasts]
    assert [level[grade] for grade in blasts] == [4, 5, 6]
    assert stains == sorted(stains, reverse=True)


def test_grades_taken_as_equal_stand_on_one_level() -> None:
    level = {row["grade"]: row["level"] for row in table("preparation_ladder").rows}
    apart = [
        (row["grade"], row["equals"])
        for row in table("preparation_equivalences").rows
        if level[row["grade"]] != level[row["equals"]]
    ]
    # machine abrading only looks like Sa 2 1/2 on the metal: the ladder keeps it one level lower
    assert apart == [("Sa 2 1/2", "P Ma")]


def test_grades_off_the_ladder() -> None:
    on = {row["grade"] for row in table("preparation_ladder").rows}
    assert sorted(row["id"] for row in table("preparation_grades").rows if row["id"] not in on) == [
        "Fl",
        "SP 16",
        "SP 17",
        "SP 8",
    ]


@pytest.mark.cases("minimum_preparation")
def test_least_preparation(case: dict[str, str]) -> None:
    wanted = ("family", "paint", "service")
    (row,) = [
        row
        for row in table("minimum_preparation").rows
        if [row[column] for column in wanted] == [case[column] for column in wanted]
    ]
    assert (row["grades"], row["document"]) == (case["grades"], case["document"])
    assert row["basis"] == ("published" if case["document"] else "practice")


def test_severe_service_never_asks_less() -> None:
    level = {row["grade"]: int(row["level"]) for row in table("preparation_ladder").rows}
    rows = table("minimum_preparation").rows
    for severe in (row for row in rows if row["service"] == "severe"):
        for normal in (row for row in rows if row["family"] == severe["family"] and row["service"] == "normal"):
            if normal["basis"] == severe["basis"]:
                assert min(level[grade] for grade in normal["grades"].split(" or ")) <= level[severe["grades"]]


@pytest.mark.cases("comparator")
def test_segment_of_a_comparator(case: dict[str, str]) -> None:
    wanted = (case["comparator"], case["segment"])
    (row,) = [row for row in table("profile_comparator").rows if (row["comparator"], row["segment"]) == wanted]
    assert (row["nominal_um"], row["basis"]) == (case["nominal"], "published")


@pytest.mark.cases("profile_grades")
def test_profile_grade(case: dict[str, str]) -> None:
    (found,) = grade_ranges(f"{case['grade']} {case['comparator']}").values()
    assert found == parse_range("thickness", f"{case['from']}..{case['below']} um")
    assert table("profile_grades").basis is Basis.MEMORY


@pytest.mark.parametrize("comparator", ["grit", "shot"])
def test_profile_grades_follow_the_segments_without_a_gap(comparator: str) -> None:
    segments = [int(row["nominal_um"]) for row in table("profile_comparator").rows if row["comparator"] == comparator]
    grades = [grade_ranges(f"{grade} {comparator}")[comparator] for grade in ("fine", "medium", "coarse")]
    ends = [tuple(end.to("um") for end in (one.low, one.high) if end is not None) for one in grades]
    assert ends == list(pairwise(segments))
    assert segments == sorted(set(segments))


@pytest.mark.cases("grains")
def test_grain_of_a_paper(case: dict[str, str]) -> None:
    row = table("abrasive_grains").row("p", case["id"])
    assert (row["um"], row["basis"]) == (case["um"], case["basis"])


def test_papers_run_strictly_from_coarse_to_fine() -> None:
    rows = table("abrasive_grains").rows
    numbers, grains = [int(row["p"]) for row in rows], [Fraction(row["um"]) for row in rows]
    assert numbers == sorted(set(numbers))
    assert grains == sorted(set(grains), reverse=True)


@pytest.mark.cases("sanding")
def test_papers_of_a_task(case: dict[str, str]) -> None:
    row = table("sanding_stages").row("id", case["id"])
    assert (row["coarsest_p"], row["finest_p"]) == (case["coarsest"], case["finest"])
    assert int(row["coarsest_p"]) < int(row["finest_p"])


def test_step_rule_holds_for_the_run_it_was_drawn_from() -> None:
    grain = {row["p"]: Fraction(row["um"]) for row in table("abrasive_grains").rows}
    limit = Fraction(table("sanding_step").rows[0]["most_ratio"])
    assert [grain[a] / grain[b] <= limit for a, b in (("40", "80"), ("80", "180"), ("180", "600"))] == [
        True,
        True,
        False,
    ]
