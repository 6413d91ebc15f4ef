"""When a comparison stops a build. Called by the command; the whole comparison is judged, what a reader may not see included."""

from __future__ import annotations

from collections.abc import Callable, Mapping

from specgen.comparison.changes import Change, Comparison, Effect
from specgen.model.declaring import Concern


def _may_be_weaker(change: Change) -> bool:
    """What waits for a person may turn out to be weaker, so it does not pass for sound."""
    return change.weighed is Effect.RELAXED or change.is_open


GATES: Mapping[str, Callable[[Comparison], bool]] = {
    "relaxed": lambda found: any(map(_may_be_weaker, found.changes)),
    "safety": lambda found: any(
        change.concern is Concern.SAFETY and _may_be_weaker(change) for change in found.changes
    ),
    "any": lambda found: not found.is_empty,
}


def shuts(gate: str, found: Comparison) -> bool:
    """True where the gate, a key of GATES, does not let the comparison through.

    None lets through what could not be read or compared, or what the rules newly refuse.
    """
    return not found.is_whole or bool(found.new_errors) or GATES[gate](found)
