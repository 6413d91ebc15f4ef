"""Findings that appeared, vanished or weigh otherwise. Called by `compare`, which is handed both reports and runs no rule."""

from __future__ import annotations

from collections import Counter
from collections.abc import Callable, Iterator, Sequence
from itertools import zip_longest

from specgen.comparison.changes import FindingMoved
from specgen.findings import Finding, Report, Severity


def moved_findings(old: Report, new: Report, now: Callable[[str], str]) -> Iterator[FindingMoved]:
    """By rule, address and severity: a finding whose line moved, or whose wording holds another number, has not moved.

    `now` gives an address of the old side as the new one calls it.
    """
    before, after = _by_key(old, now), _by_key(new, str)
    for key in dict.fromkeys((*before, *after)):
        was, held = before.get(key, []), after.get(key, [])
        gone = Counter(f.severity for f in was) - Counter(f.severity for f in held)
        come = Counter(f.severity for f in held) - Counter(f.severity for f in was)
        for pair in zip_longest(_first_of(was, gone), _first_of(held, come)):
            yield FindingMoved(*pair)


def _by_key(report: Report, now: Callable[[str], str]) -> dict[tuple[str, str], list[Finding]]:
    found: dict[tuple[str, str], list[Finding]] = {}
    for finding in report:
        found.setdefault((finding.id, now(finding.path)), []).append(finding)
    return found


def _first_of(findings: Sequence[Finding], wanted: Counter[Severity]) -> list[Finding]:
    """As many findings of each severity as are wanted."""
    left, kept = Counter(wanted), []
    for finding in findings:
        if left[finding.severity] > 0:
            left[finding.severity] -= 1
            kept.append(finding)
    return kept
