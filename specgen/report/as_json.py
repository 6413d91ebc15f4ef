"""The report for other programs, under keys that stay. Called by `check --format json`.

A change of the meaning of a key, or the loss of one, raises `SCHEMA_VERSION`; a new key does not.
"""

from __future__ import annotations

import json
from datetime import date
from typing import Any

from specgen.findings import Finding, Report, Severity, Told
from specgen.source.characters import printable

SCHEMA_VERSION = 1


def write(report: Report, *, prefix: str, on: date) -> str:
    """JSON text. `file` is relative to `folder`, which is the project as seen from the current folder.

    `line` and `column` count from 1; `end_column` is the first column after the stretch. A finding with one cause at several
    places is listed once, and `also` holds every other place with what is said there.
    """
    whole = {
        "schema_version": SCHEMA_VERSION,
        "on": on.isoformat(),
        "folder": prefix.rstrip("/") or ("/" if prefix else "."),
        "counts": {severity.value: report.count(severity) for severity in Severity},
        "findings": [_told(entry) for entry in report.told()],
        "not_judged": [
            {"paths": [printable(a) for a in one.addresses], "in_part": one.in_part, "because": printable(one.because)}
            for one in report.not_judged
        ],
    }
    return json.dumps(whole, ensure_ascii=False, indent=2) + "\n"


def _told(told: Told) -> dict[str, Any]:
    finding = told.finding
    why = {"why": printable(finding.why), "remedy": printable(finding.remedy)}
    weight = {"id": finding.id, "severity": finding.severity.value}
    return {**weight, **_standing(finding), **why, "also": [_standing(other) for other in told.also]}


def _standing(finding: Finding) -> dict[str, Any]:
    """What each place has for itself: where it is, what is said there, and on whose word."""
    place = finding.place
    return {
        "file": place.file,
        "line": place.line,
        "column": place.column,
        "end_column": place.end_column,
        "path": printable(finding.path),
        # a lone half of a character would make the file unreadable
        "what": printable(finding.what),
        "source": printable(finding.source),
    }
