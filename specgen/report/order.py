"""The order in which a person reads findings, and how many each rule has. Called by `as_text`."""

from __future__ import annotations

from collections import Counter
from collections.abc import Sequence

from specgen.findings import Report, Told


def gravest_first(report: Report) -> tuple[Told, ...]:
    """Errors, then warnings, then notes; those of one weight by file and line."""
    return tuple(sorted(report.told(), key=lambda entry: -entry.finding.severity.weight))


def totals(told: Sequence[Told]) -> str:
    """`LAY006 3, FLM003 1`: the gravest rules first, of one weight those with most findings."""
    number = Counter(entry.finding.id for entry in told)
    weight: dict[str, int] = {}
    for finding in (entry.finding for entry in told):
        weight[finding.id] = max(finding.severity.weight, weight.get(finding.id, 0))
    ranked = sorted(number, key=lambda rule: (-weight[rule], -number[rule], rule))
    return ", ".join(f"{rule} {number[rule]}" for rule in ranked)
