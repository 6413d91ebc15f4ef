"""What several records share: safety sets that products name, and the ambient conditions of a project."""

from __future__ import annotations

from typing import Any

import pytest

from specgen.comparing import compare
from specgen.model.canonical import canonical
from tests.good_spec import checked, good, loaded, put

_SETS: list[Any] = [
    {
        "id": "epoxy",
        "protection": [{"id": "sand", "task": "sanding", "respiratory": "P3 filter"}],
        "first_aid": [{"id": "eyes", "route": "eyes", "action": "Rinse."}],
    },
    {"id": "cans", "cautions": [{"id": "heat", "task": "any", "text": "Keep cool."}]},
]


def _with_sets(named: list[str]) -> dict[str, Any]:
    spec = good()
    spec["safety_sets"] = [dict(one) for one in _SETS]
    put(spec, "products.primer.hazards.safety_sets", f"[{', '.join(named)}]")
    return spec


def test_a_product_has_the_entries_of_the_sets_it_names() -> None:
    read = loaded(_with_sets(["epoxy", "cans"]))
    assert read.findings == []
    assert read.spec is not None
    hazards = read.spec.products["primer"].hazards
    assert hazards is not None
    assert [one.id for one in hazards.protection] == ["sand", "spray"]
    assert [one.id for one in hazards.first_aid] == ["eyes"]
    assert [one.id for one in hazards.cautions] == ["heat"]
    path = ("products", "primer", "hazards", "first_aid", "eyes", "action")
    assert read.place(path).text.strip().endswith("action: Rinse.")
    assert read.taken_from(path) == ("safety_sets", "epoxy")
    # who names none has none
    assert all(
        one.hazards is None or not one.hazards.first_aid for key, one in read.spec.products.items() if key != "primer"
    )
    assert "safety_sets" not in canonical(read.spec)


def test_an_entry_of_the_product_goes_before_that_of_a_set() -> None:
    spec = _with_sets(["epoxy"])
    put(
        spec,
        "products.primer.hazards.protection",
        "[{id: sand, gloves: nitrile}, {id: spray, task: spraying, skin: overall}]",
    )
    read = loaded(spec).spec
    assert read is not None
    hazards = read.products["primer"].hazards
    assert hazards is not None
    sand = hazards.protection[0]
    assert (sand.respiratory, sand.gloves) == ("P3 filter", "nitrile")


@pytest.mark.parametrize(
    ("named", "said"),
    [
        (
            ["epoxi"],
            ("MOD005", "products.primer.hazards.safety_sets.[0]", "epoxi is not the id of any set in safety_sets"),
        ),
        (
            ["epoxy", "twin"],
            (
                "BAS005",
                "products.primer.hazards.safety_sets.[1]",
                "eyes of first_aid stands in two of the sets that are named",
            ),
        ),
    ],
)
def test_faults_of_naming(named: list[str], said: tuple[str, str, str]) -> None:
    spec = _with_sets(named)
    spec["safety_sets"].append(
        {"id": "twin", "first_aid": [{"id": "eyes", "route": "eyes", "action": "Rinse for long."}]}
    )
    assert [(f.id, f.path, f.what) for f in loaded(spec).findings] == [said]


def test_a_fault_in_a_set_is_told_once_and_where_nobody_names_it() -> None:
    spec = _with_sets(["epoxy"])
    spec["safety_sets"][0]["first_aid"] = [{"id": "eyes", "route": "ears", "action": "Rinse."}]
    spec["safety_sets"][1]["cautions"] = [{"id": "heat", "task": "any"}]
    told = {
        one.finding.path: [also.path for also in one.also]
        for one in checked(spec).report.told()
        if one.finding.id[:3] == "MOD"
    }
    assert told == {
        "safety_sets.epoxy.first_aid.eyes.route": ["products.primer.hazards.first_aid.eyes.route"],
        "safety_sets.cans.cautions.heat.text": [],
    }


def test_comparison_tells_a_changed_set_at_each_product() -> None:
    old = checked(_with_sets(["epoxy"]))
    spec = _with_sets(["epoxy"])
    spec["safety_sets"][0]["first_aid"] = [{"id": "eyes", "route": "eyes", "action": "Rinse for 15 minutes."}]
    changes = compare(old, checked(spec)).changes
    assert [change.difference.path for change in changes] == [
        ("products", "primer", "hazards", "first_aid", "eyes", "action")
    ]


def test_a_job_without_ambient_conditions_has_those_of_the_project() -> None:
    spec = good()
    climate = spec["jobs"][0].pop("climate")
    spec["project"]["climate"] = climate
    put(spec, "project.climate.humidity", "30..60 %")
    spec["jobs"][0]["climate"] = {"air": "16..25 degC"}
    read = loaded(spec)
    assert read.findings == []
    assert read.spec is not None
    job = read.spec.jobs["refit"].climate
    assert job is not None
    assert (str(job.air), str(job.humidity), str(job.surface)) == ("16..25 degC", "30..60 %", "15..30 degC")
    assert read.taken_from(("jobs", "refit", "climate", "humidity")) == ("project", "climate")
    assert read.taken_from(("jobs", "refit", "climate", "air")) is None
    assert not read.spec.project.states("climate")


def test_ambient_conditions_of_the_project_are_the_same_as_written_in_the_job() -> None:
    own, shared = good(), good()
    shared["project"]["climate"] = shared["jobs"][0].pop("climate")
    (one, other) = (loaded(spec).spec for spec in (own, shared))
    assert one is not None
    assert other is not None
    assert canonical(one) == canonical(other)


def test_a_fault_in_ambient_conditions_of_the_project_is_told_once() -> None:
    spec = good()
    spec["project"]["climate"] = {"air": "20"}
    del spec["jobs"][0]["climate"]
    (one,) = (one for one in checked(spec).report.told() if one.finding.id == "MOD003")
    assert one.finding.path == "project.climate.air"
    assert [also.path for also in one.also] == ["jobs.refit.climate.air"]
