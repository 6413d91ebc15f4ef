"""The JSON report: its keys are promised, so they are pinned here."""

from __future__ import annotations

import json
from dataclasses import replace

from specgen.findings import Finding, NotJudged, Place, Report, Severity
from specgen.report.as_json import write
from tests.good_spec import ON

_FINDING = Finding(
    "FLM002",
    Severity.WARNING,
    Place("systems/cab.yaml", 12, 14, 19, "        max: 95 µm"),
    "systems.cab.layers.primer.film.max",
    "the film has no maximum",
    "runs cannot be rejected",
    "write the maximum",
    "ISO 19840:2012 (published)",
)


def test_whole_report() -> None:
    assert json.loads(write(Report.of([_FINDING]), prefix="specs/", on=ON)) == {
        "schema_version": 1,
        "on": "2026-11-25",
        "folder": "specs",
        "counts": {"error": 0, "warning": 1, "note": 0},
        "findings": [
            {
                "id": "FLM002",
                "severity": "warning",
                "file": "systems/cab.yaml",
                "line": 12,
                "column": 14,
                "end_column": 19,
                "path": "systems.cab.layers.primer.film.max",
                "what": "the film has no maximum",
                "why": "runs cannot be rejected",
                "remedy": "write the maximum",
                "source": "ISO 19840:2012 (published)",
                "also": [],
            }
        ],
        "not_judged": [],
    }


_GAP = NotJudged(("systems.cab", "jobs.refit"), "for products.primer cannot be relied on", in_part=True)


def test_what_was_not_judged_has_a_key_of_its_own() -> None:
    whole = json.loads(write(Report((), (_GAP,)), prefix="", on=ON))
    assert whole["not_judged"] == [
        {"paths": ["systems.cab", "jobs.refit"], "in_part": True, "because": "for products.primer cannot be relied on"}
    ]


def test_one_cause_is_listed_once_with_every_place() -> None:
    one = replace(_FINDING, cause="c")
    other = replace(
        one, place=Place("systems/cab.yaml", 14, 14, 19), path="systems.cab.layers.top.film.max", what="here"
    )
    apart = replace(one, place=Place("systems/cab.yaml", 15, 1, 2), severity=Severity.NOTE)
    whole = json.loads(write(Report.of([one, other, apart]), prefix="specs/", on=ON))
    assert whole["counts"] == {"error": 0, "warning": 1, "note": 1}
    first, second = whole["findings"]
    assert (first["path"], second["severity"]) == (one.path, "note")
    assert first["also"] == [
        {
            "file": "systems/cab.yaml",
            "line": 14,
            "column": 14,
            "end_column": 19,
            "path": "systems.cab.layers.top.film.max",
            "what": "here",
            "source": "ISO 19840:2012 (published)",
        }
    ]
    assert second["also"] == []


def test_clean_report() -> None:
    whole = json.loads(write(Report(), prefix="", on=ON))
    assert (whole["folder"], whole["findings"]) == (".", [])
    assert whole["counts"] == {"error": 0, "warning": 0, "note": 0}


def test_signs_stay_readable_and_damaged_ones_are_replaced() -> None:
    damaged = Finding("SRC003", Severity.ERROR, Place("a.yaml", 1, 1, 2), "", "µ and \udc80")
    text = write(Report.of([damaged]), prefix="", on=ON)
    assert "µ and \ufffd" in text
    assert text.encode("utf-8").decode("utf-8") == text
    assert text.endswith("}\n")
