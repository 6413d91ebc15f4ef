"""Changes as workflow commands beside the lines of the new side. Called by `compare`.

What is relaxed, and what a person has yet to decide, is a warning, an error where it is of safety and relaxed; the rest are notices.
"""

from __future__ import annotations

from specgen.comparison.changes import Change, Comparison, Effect
from specgen.comparison.sentences import sentence
from specgen.comparison.tally import by_effect
from specgen.model.declaring import Concern
from specgen.report.as_github import command
from specgen.report.change_text import MOST
from specgen.units.locale import counted


def write(found: Comparison, *, new_prefix: str) -> str:
    """One command a change, and a plain last line that counts. What is gone is marked where it is missing."""
    shown = found.changes
    lines = [_command(one, new_prefix) for change in shown[:MOST] for one in (change, *change.alike)]
    if len(shown) > MOST:
        more = len(shown) - MOST
        said = counted("more change is not listed", "more changes are not listed", more)
        lines.append(f"{more} {said}; --format json holds them all.")
    return "\n".join([*lines, by_effect(found)]) + "\n"


def _command(change: Change, prefix: str) -> str:
    title = f"{change.concern.value}, {change.weighed.value}"
    return command(_word(change), change.new_place, prefix, title, sentence(change))


def _word(change: Change) -> str:
    if change.weighed is Effect.RELAXED:
        return "error" if change.concern is Concern.SAFETY else "warning"
    return "warning" if change.is_open else "notice"
