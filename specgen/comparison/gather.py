"""Limits are told with the rule they are counted by, a limit that moved as one. Called by `compare`, once echoes are folded.

All that is gathered waits for a person together. The fingerprint then covers all that is told with it, so that an answer to it holds for
nothing else.
"""

from __future__ import annotations

import hashlib
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import replace

from specgen.comparison.changes import Change, Decision, Effect, Kind
from specgen.model.acceptance import Criterion, Gauge, InspectionPoint
from specgen.model.declaring import Polarity
from specgen.model.preparation import PreparationStep
from specgen.units.locale import N_

# How a limit is counted or measured, and the limits beside it that cannot be compared once that is another; None for all of them.
_COUNTED_BY: Mapping[tuple[type, str], frozenset[str] | None] = {
    (Criterion, "rule"): None,
    (Criterion, "as_specified"): None,
    (PreparationStep, "profile_method"): frozenset({"profile"}),
}
# What film is read with or a point is judged by in its author's words: to the limits of that point it is another scale.
_READ_BY: Mapping[tuple[type, str], int] = {
    (InspectionPoint, "method"): -1,
    (Gauge, "principle"): -2,
    (Gauge, "zeroed_on"): -2,
}
_READ = {"min", "nominal", "max", "spot_min", "spot_max", "area_min", "area_max", "text"}
_ONE_SIDED = {Polarity.AT_LEAST, Polarity.AT_MOST}


def gathered(changes: Sequence[Change], answers: Mapping[str, Decision]) -> list[Change]:
    """The changes, those of one decision inside one of them; every change given is found once, on top or inside another."""
    groups = _moved(_read_otherwise(_counted_otherwise([[change] for change in changes])))
    return [_as_one(group, answers) for group in groups]


Group = list[Change]


def _counted_otherwise(groups: Sequence[Group]) -> list[Group]:
    """The limits of a record that is counted by another rule, with that rule."""
    takes: dict[tuple[object, ...], tuple[Group, frozenset[str] | None]] = {}
    for group in groups:
        fact = group[0].difference
        by = (type(fact.owners[-1].record), fact.name)
        if by in _COUNTED_BY and group[0].is_open:
            takes[fact.through, fact.path[:-1]] = group, _COUNTED_BY[by]
    kept = []
    for group in groups:
        fact = group[0].difference
        head, names = takes.get((fact.through, fact.path[:-1]), (group, None))
        if head is not group and not group[0].decision and (names is None or fact.name in names):
            head += group
        else:
            kept.append(group)
    return kept


def _read_otherwise(groups: Sequence[Group]) -> list[Group]:
    """The limits of an inspection point that is read by another method or gauge, with that, and both of these as one."""
    heads: dict[tuple[object, ...], Group] = {}
    kept = []
    for group in groups:
        fact = group[0].difference
        cut = _READ_BY.get((type(fact.owners[-1].record), fact.name))
        if cut is not None and group[0].is_open:
            head = heads.setdefault((fact.through, fact.path[:cut]), group)
            if head is not group:
                head += group
                continue
        kept.append(group)
    limits = [group for group in kept if _is_limit_of_a_point(group[0])]
    for group in limits:
        fact = group[0].difference
        found = heads.get((fact.through, fact.path[:-2]))
        if found is not None and not group[0].decision:
            found += group
            kept = [other for other in kept if other is not group]
    return kept


def _is_limit_of_a_point(change: Change) -> bool:
    fact = change.difference
    return type(fact.owners[-1].record) is Criterion and fact.name in _READ


def _moved(groups: Sequence[Group]) -> list[Group]:
    """A limit of a criterion that is no longer stated where the same one is newly stated: of every reading, now of a spot."""
    kept: list[Group] = []
    waiting: dict[tuple[object, ...], Group] = {}
    for group in groups:
        fact = group[0].difference
        value = fact.old if fact.new is None else fact.new
        comes_or_goes = fact.kind in {Kind.ADDED, Kind.REMOVED} and fact.polarity in _ONE_SIDED
        if len(group) > 1 or not comes_or_goes or type(fact.owners[-1].record) is not Criterion:
            kept.append(group)
            continue
        other = Kind.ADDED if fact.kind is Kind.REMOVED else Kind.REMOVED
        head = waiting.pop((fact.path[:-1], fact.polarity, value, other), None)
        if head is None:
            waiting[fact.path[:-1], fact.polarity, value, fact.kind] = group
            kept.append(group)
        else:
            head[0] = replace(head[0], effect=Effect.SHIFTED, note=N_("the same limit now applies to another mean"))
            head += group
    return kept


def _as_one(group: Group, answers: Mapping[str, Decision]) -> Change:
    head, *others = group
    if not others:
        return head
    follows = (*head.follows, *_flat(others))
    whole = "".join((head.fingerprint, *sorted(change.fingerprint for change in follows)))
    name = hashlib.sha256(whole.encode()).hexdigest()[: len(head.fingerprint)]
    return replace(head, follows=follows, fingerprint=name, decision=answers.get(name))


def _flat(changes: Sequence[Change]) -> Iterator[Change]:
    for change in changes:
        yield replace(change, follows=())
        yield from change.follows
