"""Inspection points as the method statement prints them: on which items, with which gauge, how many readings, what passes."""

from __future__ import annotations

from specgen.documents.parts.inspection import points_table
from specgen.documents.parts.wording import Words
from specgen.units.locale import ENGLISH
from tests.good_spec import checked, good, put, spec_of, take_out

NB = "\N{NO-BREAK SPACE}"


def _rows(changes: dict[str, str]) -> dict[str, tuple[str, ...]]:
    """The cells of each point by its check."""
    source = good()
    take_out(source, "project.second_units")
    for path, value in changes.items():
        put(source, path, value)
    spec = spec_of(checked(source))
    rows = points_table(spec.jobs["refit"], spec, Words.of(spec.project, ENGLISH)).rows
    return {row[2].splitlines()[0]: row for row in rows}


def test_items_are_named_where_a_point_looks_at_some_only() -> None:
    assert _rows({})["Film of the primer"][2] == "Film of the primer"
    named = _rows({"jobs.refit.inspection.primer-film.items": "[DOOR]"})
    assert named["Film of the primer"][2] == "Film of the primer\non DOOR"


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
        "measurement areas: 1, spot measurements: 5, gauge readings: 15",
        "at least 25 mm from edges, corners and holes",
    ]


def test_a_count_that_is_not_stated_is_not_printed() -> None:
    row = _rows({"jobs.refit.inspection.primer-film.readings": "{spots: 5}"})["Film of the primer"]
    assert row[3].replace(NB, " ").splitlines()[-1] == "spot measurements: 5"


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
        "Written down.",
    ]
