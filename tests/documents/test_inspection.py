"""Inspection points as the method statement prints them: on which items, with which gauge, how many readings, what passes."""

from __future__ import annotations

import pytest

from specgen.documents.parts.inspection import points_table
from specgen.documents.parts.wording import Words
from specgen.units.locale import ENGLISH
from tests.good_spec import good, put, spec_of, take_out

NB = "\N{NO-BREAK SPACE}"


def _rows(changes: dict[str, str]) -> dict[str, tuple[str, ...]]:
    """The cells of each point by its check."""
    source = good()
    take_out(source, "project.second_units")
    for path, value in changes.items():
        put(source, path, value)
    spec = spec_of(source)
    rows = points_table(spec.jobs["refit"], spec, Words.of(spec.project, ENGLISH)).rows
    return {row[2].splitlines()[0]: row for row in rows}


def test_items_are_named_where_a_point_looks_at_some_only() -> None:
    assert _rows({})["Film of the primer"][2] == "Film of the primer"
    named = _rows({"jobs.refit.inspection.primer-film.items": "[DOOR]"})
    assert named["Film of the primer"][2] == "Film of the primer\n(DOOR)"


def test_gauge_and_readings_are_printed() -> None:
    row = _rows(
        {
            "jobs.refit.inspection.primer-film.gauge": "{principle: magnetic, zeroed_on: blast-profile, correction: 25 um}",
            "jobs.refit.inspection.primer-film.readings": "{areas: 1, spots: 5, readings: 15, from_edge: 25 mm}",
        }
    )["Film of the primer"]
    assert row[3].replace(NB, " ").splitlines() == [
        "magnetic gauge",
        "gauge: magnetic, zeroed on the blast profile, deduct 25 µm from each reading",
        "5 spots a door",
        "measurement areas: 1, spots: 5, readings: 15",
        "at least 25 mm from edges, corners and holes",
    ]


def test_a_count_that_is_not_stated_is_not_printed() -> None:
    row = _rows({"jobs.refit.inspection.primer-film.readings": "{spots: 5}"})["Film of the primer"]
    assert row[3].replace(NB, " ").splitlines()[-1] == "spots: 5"


def test_every_limit_of_a_criterion_is_printed() -> None:
    criterion = (
        "{rule: SSPC-PA-2, edition: '2012', level: 3, min: 40 um, max: 80 um, nominal: 60 um, spot_min: 32 um, spot_max: 96 um,"
        " area_min: 40 um, area_max: 80 um, low_readings: fewer-than, governs: yes, text: Written down.}"
    )
    row = _rows({"jobs.refit.inspection.primer-film.criterion": criterion})["Film of the primer"]
    assert row[4].replace(NB, " ").splitlines() == [
        "at least 40 µm",
        "at most 80 µm",
        "nominal 60 µm",
        "spot measurement at least 32 µm",
        "spot measurement at most 96 µm",
        "area measurement at least 40 µm",
        "area measurement at most 80 µm",
        "SSPC-PA 2 edition 2012 level 3",
        "fewer than 20 % of the readings may be below the nominal DFT",
        "this rule takes precedence",
        "accepted by this rule: spot measurement 32 to 96 µm; mean 40 to 80 µm; a single gauge reading is not limited",
        "Written down.",
    ]


ACCEPTED = {
    "a spot below what is asked": (
        "{rule: SSPC-PA-2, edition: '2012', level: 3, min: 65 um, max: 110 um}",
        "spot measurement 52 to 132 µm; mean 65 to 110 µm; a single gauge reading is not limited",
    ),
    "a level from memory": (
        "{rule: SSPC-PA-2, edition: '2012', level: 5, min: 2.5 mil, max: 4 mil}",
        "spot measurement at least 2 mil; mean at least 2.5 mil; a single gauge reading is not limited"
        " (not verified against the published text)",
    ),
    "a level with written limits": (
        "{rule: SSPC-PA-2, edition: '2012', level: 2, min: 40 um, max: 80 um, spot_min: 40 um, spot_max: 90 um}",
        "spot measurement 40 to 90 µm; mean 40 to 80 µm; a single gauge reading is not limited",
    ),
    "three times the nominal": (
        "{rule: ISO-19840, nominal: 120 um, low_readings: at-most}",
        "single reading 96 to 360 µm; mean at least 120 µm; at most 20 % of the readings below 120 µm;"
        " no maximum is stated, so it is three times the nominal DFT",
    ),
    "the stricter reading where none is stated": (
        "{rule: ISO-19840, nominal: 120 um, min: 100 um, max: 150 um}",
        "single reading 100 to 150 µm; mean at least 120 µm; fewer than 20 % of the readings below 120 µm",
    ),
    "90-10": (
        "{rule: 90-10, nominal: 60 um}",
        "single reading at least 54 µm; at most 10 % of the readings below 60 µm",
    ),
    "80-20": (
        "{rule: 80-20, nominal: 60 um, max: 80 um}",
        "single reading 48 to 80 µm; at most 20 % of the readings below 60 µm (common practice, no source)",
    ),
}


@pytest.mark.parametrize(("criterion", "told"), ACCEPTED.values(), ids=ACCEPTED)
def test_what_a_rule_accepts_is_printed(criterion: str, told: str) -> None:
    row = _rows({"jobs.refit.inspection.primer-film.criterion": criterion})["Film of the primer"]
    printed = [line for line in row[4].replace(NB, " ").splitlines() if line.startswith("accepted")]
    assert printed == [f"accepted by this rule: {told}"]


def test_a_rule_that_words_decide_accepts_what_they_say() -> None:
    for criterion in ("{rule: own, min: 40 um, text: every spot}", "{rule: 90-10, max: 80 um}"):
        row = _rows({"jobs.refit.inspection.primer-film.criterion": criterion})["Film of the primer"]
        assert "accepted" not in row[4]


def test_as_specified_prints_the_limits_of_the_coat() -> None:
    changes = {"jobs.refit.inspection.primer-film.criterion": "{as_specified: yes}"}
    assert _rows(changes)["Film of the primer"][4].replace(NB, " ").splitlines() == [
        "at least 40 µm",
        "at most 80 µm",
        "nominal 60 µm",
        "as specified; no reading outside these limits",
    ]


def test_as_specified_counted_by_a_rule_prints_what_the_rule_accepts() -> None:
    changes = {
        "jobs.refit.inspection.primer-film.criterion": '{as_specified: yes, rule: SSPC-PA-2, edition: "2012", level: 3, max: 75 um}'
    }
    lines = _rows(changes)["Film of the primer"][4].replace(NB, " ").splitlines()
    # what is stated beside it takes precedence
    assert lines[:4] == ["at least 40 µm", "at most 75 µm", "nominal 60 µm", "as specified"]
    assert "accepted by this rule: " in lines[-1]
    assert "spot measurement 32 to 90 µm" in lines[-1]


def test_as_specified_of_several_coats_counts_what_sanding_leaves_beneath() -> None:
    changes = {
        "systems.cab.layers.primer.sanding_removes": "15 um",
        "jobs.refit.inspection.primer-film.criterion": "{as_specified: yes}",
        "jobs.refit.inspection.two": "{id: two, check: Film of two, after: base, gauge: {principle: magnetic}, criterion: {as_specified: yes}}",
        "jobs.refit.inspection.all": "{id: all, check: Film of all, at: completion, items: [DOOR], gauge: {principle: magnetic}, criterion: {as_specified: yes}}",
        "jobs.refit.inspection.sanded": "{id: sanded, check: Film left, after: primer, after_sanding: yes, gauge: {principle: magnetic}, criterion: {as_specified: yes}}",
    }
    rows = _rows(changes)

    def limits(check: str) -> list[str]:
        return rows[check][4].replace(NB, " ").splitlines()[:3]

    assert limits("Film of the primer") == ["at least 40 µm", "at most 80 µm", "nominal 60 µm"]
    assert limits("Film left") == ["at least 25 µm", "at most 80 µm", "nominal 45 µm"]
    # 25 + 15; 80 + 30; 45 + 20
    assert limits("Film of two") == ["at least 40 µm", "at most 110 µm", "nominal 65 µm"]
    # the total is stated
    assert limits("Film of all") == ["at least 95 µm", "at most 180 µm", "nominal 130 µm"]


def test_as_specified_of_items_with_different_films_prints_each() -> None:
    changes = {
        "jobs.refit.inspection.all": "{id: all, check: Film of all, at: completion, gauge: {principle: magnetic}, criterion: {as_specified: yes}}"
    }
    assert _rows(changes)["Film of all"][4].replace(NB, " ").splitlines()[:6] == [
        "DOOR:",
        "at least 95 µm",
        "at most 180 µm",
        "nominal 130 µm",
        "as specified; no reading outside these limits",
        "STEP:",
    ]


def test_as_specified_counts_the_existing_coats_under_the_gauge() -> None:
    changes = {
        "jobs.refit.items.DOOR.old_coats": "[{id: old, family: pu_2k_aliphatic, thickness: 50 um, sound: yes, cured: yes, rub: resistant}]",
        "jobs.refit.inspection.primer-film.criterion": "{as_specified: yes}",
    }
    assert _rows(changes)["Film of the primer"][4].replace(NB, " ").splitlines()[:3] == [
        "at least 90 µm",
        "at most 130 µm",
        "nominal 110 µm",
    ]
