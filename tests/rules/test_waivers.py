"""Waivers: a warning becomes a note until the waiver's day; unused, expired and misdirected waivers are findings."""

from __future__ import annotations

import copy
from datetime import date
from typing import Any

from specgen.findings import Severity
from tests.good_spec import checked, found, good, put

# A spec with one warning: two passes of the primer do not give its film.
PATH = "systems.cab.layers.primer.passes"


def _spec(rule: str = "FLM007", path: str = PATH, until: str = "2027-03-31") -> dict[str, Any]:
    spec = good()
    put(spec, PATH, "2")
    waiver = f"{{id: w, rule: {rule}, path: {path}, reason: trial panel measured, by: Quality, until: {until}}}"
    put(spec, "jobs.refit.waivers", f"[{waiver}]")
    return spec


def test_without_waiver_it_is_a_warning() -> None:
    spec = good()
    put(spec, PATH, "2")
    assert [(f.id, f.severity) for f in checked(spec).report] == [("FLM007", Severity.WARNING)]


def test_waived_warning_is_a_note_with_name_and_day() -> None:
    (note,) = checked(_spec()).report
    assert (note.id, note.severity) == ("FLM007", Severity.NOTE)
    assert note.what.startswith("waived by Quality until 2027-03-31: 2 passes of 15 um give 30 um")


def test_waiver_holds_on_its_last_day_and_not_after() -> None:
    assert found(_spec(), date(2027, 3, 31)) == [("FLM007", PATH)]
    late = checked(_spec(), date(2027, 4, 1)).report
    assert [(f.id, f.severity) for f in late] == [("FLM007", Severity.WARNING), ("WVR002", Severity.WARNING)]
    assert [f.path for f in late][1] == "jobs.refit.waivers.w.until"


def test_unused_waiver() -> None:
    assert found(_spec(path="systems.cab.layers.base.passes")) == [
        ("FLM007", PATH),
        ("WVR001", "jobs.refit.waivers.w"),
    ]


def test_error_cannot_be_waived() -> None:
    spec = good()
    put(spec, "systems.cab.total", "{nominal: 120 um}")
    where = "systems.cab.total.nominal"
    put(
        spec,
        "jobs.refit.waivers",
        f"[{{id: w, rule: FLM005, path: {where}, reason: none, by: Quality, until: 2027-03-31}}]",
    )
    report = checked(spec).report
    assert sorted((f.id, f.severity, f.path) for f in report) == [
        ("FLM005", Severity.ERROR, where),
        ("WVR003", Severity.ERROR, "jobs.refit.waivers.w"),
    ]


def test_hazard_error_cannot_be_waived() -> None:
    spec = good()
    del spec["products"][1]["hazards"]["signal_word"]
    where = "products.base.hazards.signal_word"
    put(
        spec,
        "jobs.refit.waivers",
        f"[{{id: w, rule: HAZ002, path: {where}, reason: none, by: Quality, until: 2027-03-31}}]",
    )
    assert found(spec) == [("HAZ002", where), ("WVR003", "jobs.refit.waivers.w")]


def test_system_finding_needs_the_waiver_of_every_job_with_it() -> None:
    spec = _spec()
    second = {**good()["jobs"][0], "id": "second", "document": {"number": "MS-002", "title": "Second", "owner": "Desk"}}
    spec["jobs"].append(second)
    assert [(f.id, f.severity) for f in checked(spec).report] == [("FLM007", Severity.WARNING)]
    second["waivers"] = copy.deepcopy(spec["jobs"][0]["waivers"])
    assert [(f.id, f.severity) for f in checked(spec).report] == [("FLM007", Severity.NOTE)]


def test_policy_raises_a_warning_to_an_error() -> None:
    spec = good()
    put(spec, PATH, "2")
    put(spec, "project.policies", "{raise_to_error: [FLM007]}")
    (finding,) = checked(spec).report
    assert (finding.severity, finding.source) == (Severity.ERROR, "policy of this project")


def test_a_job_that_only_names_the_system_carries_the_waiver_too() -> None:
    spec = _spec()
    other = copy.deepcopy(spec["jobs"][0]) | {"id": "other", "waivers": []}
    other["document"]["number"] = "MS-002"
    spec["jobs"].append(other)
    put(spec, "jobs.other.items", "[{id: STEP, name: Step, area: 4000 cm2, count: 2, system: chassis}]")
    put(spec, "jobs.other.inspection", "[]")
    put(spec, "jobs.other.system", "chassis")

    def weight() -> Severity:
        (only,) = (one for one in checked(spec).report if one.id == "FLM007")
        return only.severity

    assert weight() is Severity.NOTE
    # every item overrides it, and still the document cannot be issued past an open warning in it
    put(spec, "jobs.other.system", "cab")
    assert weight() is Severity.WARNING
