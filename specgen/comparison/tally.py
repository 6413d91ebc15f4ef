"""How many changes there are of each effect and concern. Called by the reports and the change notice."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable, Mapping

from specgen.comparison.changes import Change, Comparison, Effect
from specgen.model.declaring import Concern

OPEN_WORD = "open"
"""What is counted for a change that waits for a person, whatever the program calls it."""


def counted(changes: Iterable[Change]) -> Mapping[Concern, Mapping[str, int]]:
    """By concern, then by effect or `open`; only what is there."""
    found: dict[Concern, Counter[str]] = {concern: Counter() for concern in Concern}
    for change in changes:
        found[change.concern][OPEN_WORD if change.is_open else change.weighed.value] += 1
    return {concern: dict(numbers) for concern, numbers in found.items() if numbers}


def by_effect(found: Comparison) -> str:
    """`5 relaxed (1 of safety), 3 for a person to decide, 2 tightened`."""
    shown = found.changes
    pieces = []
    for word, held in (
        ("relaxed", [c for c in shown if c.weighed is Effect.RELAXED]),
        ("for a person to decide", [c for c in shown if c.is_open]),
        ("tightened", [c for c in shown if c.weighed is Effect.TIGHTENED]),
        ("facts", [c for c in shown if c.weighed is Effect.FACT]),
        ("editorial", [c for c in shown if c.weighed is Effect.EDITORIAL]),
    ):
        if held:
            safety = sum(change.concern is Concern.SAFETY for change in held)
            named = "fact" if word == "facts" and len(held) == 1 else word
            pieces.append(f"{len(held)} {named}" + (f" ({safety} of safety)" if safety else ""))
    if found.withheld:
        pieces.append(f"{found.withheld} in the manufacturer's confidential data (--audience maker shows them)")
    nothing = "no value changed" if found.is_whole else "no value changed in what could be compared"
    return (", ".join(pieces) or nothing) + "."
