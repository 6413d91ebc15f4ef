"""Waivers: a warning becomes a note until the waiver's day; unused, expired and misdirected waivers are findings."""

from __future__ import annotations

import copy
from datetime import date
from typing import Any

import pytest

from specgen.findings import Severity
from specgen.printing.documents import Refused, print_documents
from specgen.report.explanations import explanations
from specgen.rules.declare import all_rules
from tests.good_spec import checked, found, good, put

# A spec with one warning: two cross coats of the primer do not give its DFT.
PATH = "systems.cab.layers.primer.passes"
# a rule that nobody can waive, where it warns: an expert has to judge the class that the composition reaches
SHUT, SHUT_PATH = "HAZ026", "products.primer.hazards.classification"
SHUT_CLASS = "[{id: vapour, hazard_class: stot_single, category: 3, statement: H336}]"


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
    assert note.what.startswith("waived by Quality until 2027-03-31: 2 cross coats of 15 um give a DFT of 30 um")
    assert note.remedy == "Nothing until 2027-03-31; assess it again then."


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
    put(spec, "systems.cab.total", "{min: 95 um, nominal: 120 um, max: 180 um}")
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


def _shut(**changed: str) -> dict[str, Any]:
    """A warning of a rule that nobody can waive, and a waiver aimed at it."""
    spec = good()
    put(spec, "products.primer.composition.solvent.classes", SHUT_CLASS)
    waiver = {"id": "w", "rule": SHUT, "path": SHUT_PATH, "reason": "none", "by": "Quality", "until": "2027-03-31"}
    spec["jobs"][0]["waivers"] = [waiver | changed]
    return spec


def test_what_nobody_can_waive_stays_a_warning_and_the_waiver_is_refused() -> None:
    report = checked(_shut()).report
    assert sorted((f.id, f.severity, f.path) for f in report if f.id in {SHUT, "WVR004"}) == [
        (SHUT, Severity.WARNING, SHUT_PATH),
        ("WVR004", Severity.ERROR, "jobs.refit.waivers.w.rule"),
    ]
    (fault,) = (f for f in report if f.id == "WVR004")
    assert fault.what == f"the waiver w names {SHUT}, which cannot be waived"


def test_such_a_waiver_is_refused_by_its_rule_even_past_its_day_and_with_nothing_found() -> None:
    spec = good()
    spec["jobs"][0]["waivers"] = _shut(until="2026-01-01")["jobs"][0]["waivers"]
    assert found(spec) == [("WVR004", "jobs.refit.waivers.w.rule")]


def test_such_a_waiver_is_never_printed() -> None:
    with pytest.raises(Refused, match="nothing is printed"):
        print_documents(checked(_shut()), documents=["method-statement"], formats=["html"])


def test_policy_that_raises_it_makes_it_an_error_that_is_not_waived_either() -> None:
    spec = _shut()
    put(spec, "project.policies", f"{{raise_to_error: [{SHUT}]}}")
    assert sorted((f.id, f.severity) for f in checked(spec).report if f.id in {SHUT, "WVR003", "WVR004"}) == [
        (SHUT, Severity.ERROR),
        ("WVR003", Severity.ERROR),
    ]


def test_every_rule_says_whether_its_warnings_can_be_waived() -> None:
    pages = {page_id: dict(page.parts)["Severity"] for page_id, page in explanations().items()}
    said = {page_id for page_id, text in pages.items() if text.endswith("not even where it warns")}
    assert said == {rule.id for rule in all_rules() if not rule.waivable}
    assert len(said) == 26


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
