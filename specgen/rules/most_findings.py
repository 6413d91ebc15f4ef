"""How many findings of rules one run lists. Called by `specgen.checking`; `specgen explain RUN002` prints the page."""

from __future__ import annotations

from specgen.findings import Finding, Severity

TOO_MANY = "RUN002"
MOST = 2_000

WHY = "A list of thousands is worked off by nobody, and most of it has the same few causes."
REMEDY = "Put right what is listed and check again."


def severest(found: list[Finding]) -> list[Finding]:
    """The 2,000 severest, and RUN002 with the number of the others, as severe as the worst of them."""
    if len(found) <= MOST:
        return found
    ranked = sorted(found, key=lambda finding: -finding.severity.weight)
    kept, left = ranked[:MOST], ranked[MOST:]
    errors = sum(finding.severity is Severity.ERROR for finding in left)
    what = f"{len(left):,} more findings are not listed, {errors:,} of them errors"
    first = left[0]
    return [*kept, Finding(TOO_MANY, first.severity, first.place, "", what, WHY, REMEDY)]
