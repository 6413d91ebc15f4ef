"""Findings that appeared, vanished or weigh otherwise. Called by `compare`, which is handed both reports and runs no rule."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator, Sequence
from itertools import zip_longest

from specgen.comparison.changes import FindingMoved
from specgen.findings import Finding, Report, Severity


def moved_findings(old: Report, new: Report) -> Iterator[FindingMoved]:
    """By rule, address and severity: a finding whose line moved, or whose wording holds another number, has not moved."""
    before, after = _by_key(old), _by_key(new)
    for key in dict.fromkeys((*before, *after)):
        was, now = before.get(key, []), after.get(key, [])
        gone = Counter(f.severity for f in was) - Counter(f.severity for f in now)
        come = Counter(f.severity for f in now) - Counter(f.severity for f in was)
        for pair in zip_longest(_first_of(was, gone), _first_of(now, come)):
            yield FindingMoved(*pair)


def _by_key(report: Report) -> dict[tuple[str, str], list[Finding]]:
    found: dict[tuple[str, str], list[Finding]] = {}
    for finding in report:
        found.setdefault((finding.id, finding.path), []).append(finding)
    return found


def _first_of(findings: Sequence[Finding], wanted: Counter[Severity]) -> list[Finding]:
    """As many findings of each severity as are wanted."""
    left, kept = Counter(wanted), []
    for finding in findings:
        if left[finding.severity] > 0:
            left[finding.severity] -= 1
            kept.append(finding)
    return kept
