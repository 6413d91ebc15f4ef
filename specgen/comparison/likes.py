"""The same swap of a reference in many places is one decision, told once with its number. Called by `compare`, last of all.

Ten systems whose layers all get product B in the place of A: one line, the gravest of the ten leading, the others kept in it.
"""

from __future__ import annotations

import hashlib
from collections.abc import Callable, Mapping, Sequence
from dataclasses import replace

from specgen.comparison.changes import Change, Decision, Effect, Reached
from specgen.model.job import Job
from specgen.model.spec import LIST_KINDS


def told_once(
    changes: Sequence[Change], answers: Mapping[str, Decision], weight: Callable[[Change], tuple[int, int]]
) -> list[Change]:
    """The changes with those alike inside the first of the heaviest; every change given is found once, on top or inside another.

    The fingerprint of what is told as one covers all of it in whatever order, so that an answer holds for just these places. One that
    has an answer of its own is told by itself; the others keep their fingerprint, or an answer to one would void that to all.
    """
    groups: dict[object, list[Change]] = {}
    for number, change in enumerate(changes):
        groups.setdefault(_swap_of(change) or number, []).append(change)
    return [told for group in groups.values() for told in _as_one(group, answers, weight)]


def _swap_of(change: Change) -> object:
    """What is swapped for what in what kind of place, with all that is told with it; None for any other change."""
    fact = change.difference
    if change.effect is not Effect.REPLACED or fact.refers not in LIST_KINDS or fact.through:
        return None
    finer = tuple((c.difference.name, c.difference.old, c.difference.new) for c in change.follows if not _on_shelf(c))
    return type(fact.owners[-1].record), fact.name, fact.kind, fact.old, fact.new, finer


def _on_shelf(change: Change) -> bool:
    """True for a record that came or went with the reference, which is told with the first that leads to it."""
    return len(change.difference.path) == 2


def _as_one(
    group: Sequence[Change], answers: Mapping[str, Decision], weight: Callable[[Change], tuple[int, int]]
) -> list[Change]:
    if len(group) == 1:
        return [*group]
    whole = "".join(sorted(change.fingerprint for change in group))
    name = hashlib.sha256(whole.encode()).hexdigest()[: len(group[0].fingerprint)]
    answered = [change for change in group if change.decision]
    open_ones = [change for change in group if not change.decision]
    if len(open_ones) < 2:
        return [*answered, *(replace(change, decision=answers.get(name)) for change in open_ones)]
    head = min(open_ones, key=weight)
    others = tuple(change for change in open_ones if change is not head)
    shelf = tuple(echo for change in others for echo in change.follows if _on_shelf(echo))
    others = tuple(replace(c, follows=tuple(echo for echo in c.follows if not _on_shelf(echo))) for c in others)
    head = replace(head, follows=(*head.follows, *shelf))
    told = replace(head, alike=others, reaches=_all_reached(open_ones), fingerprint=name, decision=answers.get(name))
    return [*answered, told]


def _all_reached(group: Sequence[Change]) -> tuple[Reached, ...]:
    items: dict[str, list[str]] = {}
    for change in group:
        job = change.difference.owners[0].record
        own = (Reached(job.document.number, ()),) if isinstance(job, Job) else ()
        for entry in (*change.reaches, *own):
            items.setdefault(entry.number, []).extend(entry.items)
    return tuple(Reached(number, tuple(dict.fromkeys(listed))) for number, listed in items.items())
