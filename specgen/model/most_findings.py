"""How many findings of shape one file may have: a list of thousands is worked off by nobody and fills the disk of whoever keeps it.

Called by `parse`, which also stops reading a file that has passed the limit.
"""

from __future__ import annotations

from collections.abc import Iterable

from specgen.findings import Finding
from specgen.source.faults import fault
from specgen.source.reader import FINDING_LIMIT


def first_of_each_file(findings: Iterable[Finding]) -> list[Finding]:
    """The first 500 findings of each file in the order of its lines, then SRC037 where there are more."""
    by_file: dict[str, list[Finding]] = {}
    for finding in findings:
        by_file.setdefault(finding.place.file, []).append(finding)
    kept: list[Finding] = []
    for found in by_file.values():
        if len(found) > FINDING_LIMIT:
            found.sort(key=lambda finding: (finding.place.line, finding.place.column, finding.id))
            place = found[FINDING_LIMIT].place
            found[FINDING_LIMIT:] = [fault("SRC037", f"The faults from line {place.line} on are not listed.", place)]
        kept.extend(found)
    return kept
