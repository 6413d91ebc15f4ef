"""Changes that come of another change are told with it, not beside it. Called by `compare`.

A layer that gets another product gets another variant too, and that product may come onto the shelf for it; one decision was
taken, so one change is told.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from specgen.comparison.changes import Change, Effect, Kind
from specgen.model.declaring import Polarity
from specgen.model.spec import LIST_KINDS

# of a choice that was made anew, the finer choice within it
_FINER = {"product": ("variant",)}


def fold(changes: Sequence[Change]) -> list[Change]:
    """The changes with their echoes inside them; every change given is found once, on top or inside another."""
    echoes: dict[int, list[Change]] = {}
    folded: set[int] = set()
    at = {(c.difference.through, c.difference.path): number for number, c in enumerate(changes)}
    came = {c.difference.path: n for n, c in enumerate(changes) if c.difference.kind is Kind.ADDED and _on_shelf(c)}
    gone = {
        c.difference.old_path: n for n, c in enumerate(changes) if c.difference.kind is Kind.REMOVED and _on_shelf(c)
    }
    for number, change in enumerate(changes):
        fact = change.difference
        if change.effect is not Effect.REPLACED or fact.polarity is not Polarity.REPLACED:
            continue
        found = [at.get((fact.through, (*fact.path[:-1], finer))) for finer in _FINER.get(fact.name, ())]
        if fact.refers in LIST_KINDS:
            found += [came.get((fact.refers, str(fact.new))), gone.get((fact.refers, str(fact.old)))]
        for echo in found:
            if echo is not None and echo not in folded and echo != number:
                folded.add(echo)
                echoes.setdefault(number, []).append(changes[echo])
    return [
        replace(change, follows=tuple(echoes[number])) if number in echoes else change
        for number, change in enumerate(changes)
        if number not in folded
    ]


def _on_shelf(change: Change) -> bool:
    return len(change.difference.path) == 2
