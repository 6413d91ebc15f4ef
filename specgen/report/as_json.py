"""The report for other programs, under keys that stay. Called by `check --format json`.

A change of the meaning of a key, or the loss of one, raises `SCHEMA_VERSION`; a new key does not.
"""

from __future__ import annotations

import json
from datetime import date
from typing import Any

from specgen.findings import Finding, Report, Severity
from specgen.source.characters import printable

SCHEMA_VERSION = 1


def write(report: Report, *, prefix: str, on: date) -> str:
    """JSON text. `file` is relative to `folder`, which is the project as seen from the current folder.

    `line` and `column` count from 1; `end_column` is the first column after the stretch.
    """
    whole = {
        "schema_version": SCHEMA_VERSION,
        "on": on.isoformat(),
        "folder": prefix.rstrip("/") or ("/" if prefix else "."),
        "counts": {severity.value: report.count(severity) for severity in Severity},
        "findings": [_finding(finding) for finding in report],
    }
    return json.dumps(whole, ensure_ascii=False, indent=2) + "\n"


def _finding(finding: Finding) -> dict[str, Any]:
    place = finding.place
    said = {"what": finding.what, "why": finding.why, "remedy": finding.remedy, "source": finding.source}
    return {
        "id": finding.id,
        "severity": finding.severity.value,
        "file": place.file,
        "line": place.line,
        "column": place.column,
        "end_column": place.end_column,
        "path": printable(finding.path),
        # a lone half of a character would make the file unreadable
        **{key: printable(text) for key, text in said.items()},
    }
