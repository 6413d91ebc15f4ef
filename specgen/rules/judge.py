"""The rules on one folder or on several, in processes beside each other where that is quicker. Called by `specgen.checking`.

To read the modules of the rules takes as long as to run them once, so that each process reads those of its own families alone. The
rules that read sentences stay together: they share what they look for, and it would be made ready in either process. Of a large
folder each process takes a share of the records besides.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from datetime import date
from functools import partial
from typing import NamedTuple

from specgen.findings import Finding
from specgen.model.parse import Loaded
from specgen.model.spec import LIST_KINDS
from specgen.rules.alternatives import by_every_way, with_alternatives
from specgen.rules.declare import Rule, families, rules_of
from specgen.rules.offers import on_offers
from specgen.rules.run import Share, Stopped, Timings, found_by_rule
from specgen.side_by_side import cores, side_by_side
from specgen.standards.reads import note, recorded

_MANY = 400  # records


class Judged(NamedTuple):
    """What was found in a folder, which rules could not judge which record, the ids of the rules that no waiver sets aside, and the
    seconds of each."""

    found: list[Finding]
    stopped: list[Stopped]
    never_waived: frozenset[str]
    timings: Timings


class _Part(NamedTuple):
    by_rule: dict[str, list[Finding]]
    by_every_way: dict[str, list[list[Finding]]]
    on_offers: list[Finding]
    stopped: list[Stopped]
    never_waived: frozenset[str]
    timings: Timings
    looked_into: frozenset[str]


def judge(folders: Sequence[Loaded], on: date, *, beginning: bool = False) -> list[Judged]:
    """The findings on each folder by the day `on`, in the order of the ids of the rules, then those with the products offered.

    `beginning`: no rule was read yet, so that even a small folder is judged sooner by two processes than by one.
    """
    parts = cores() if is_many(folders) else 1
    shares = [(sentences, Share(number, parts)) for sentences in (True, False) for number in range(parts)]
    works = [partial(_judged, *share, folders, on) for share in shares]
    told = list(side_by_side(works, here_too=True)) if beginning or parts > 1 else [work() for work in works]
    return [_together(loaded, [part[number] for part in told]) for number, loaded in enumerate(folders)]


def is_many(folders: Sequence[Loaded]) -> bool:
    """True of so many records that judging them in shares is quicker than in one process."""
    held = [loaded.judged for loaded in folders if loaded.judged is not None]
    return sum(len(getattr(spec, kind)) for spec in held for kind in LIST_KINDS) >= _MANY


def _judged(sentences: bool, share: Share, folders: Sequence[Loaded], on: date) -> list[_Part]:
    # a rule takes its citation from a table when its module is read, which is no part of judging
    rules = [rule for family in families(sentences=sentences) for rule in rules_of(family)]
    return [_on_folder(rules, share, loaded, on) for loaded in folders]


def _on_folder(rules: Sequence[Rule], share: Share, loaded: Loaded, on: date) -> _Part:
    stopped: list[Stopped] = []
    timings: Timings = {}
    with recorded() as names:
        found = found_by_rule(loaded, on, rules, timings, stopped, share=share)
        # of a folder in which nothing can be judged no rule says anything
        by_rule = {rule.id: each for rule, each in zip(rules, found, strict=loaded.judged is not None)}
        with_products = rules if share.number == 0 else ()
        ways, offered = by_every_way(loaded, on, with_products), on_offers(loaded, on, with_products)
    never_waived = frozenset(rule.id for rule in rules if not rule.waivable)
    return _Part(by_rule, ways, offered, stopped, never_waived, timings, frozenset(names))


def _together(loaded: Loaded, parts: Sequence[_Part]) -> Judged:
    for part in parts:
        note(part.looked_into)
    by_rule: dict[str, list[Finding]] = {}
    timings: Timings = {}
    for part in parts:
        for id, more in part.by_rule.items():
            by_rule.setdefault(id, []).extend(more)
        for id, seconds in part.timings.items():
            timings[id] = timings.get(id, 0.0) + seconds
    of_ways: dict[str, list[list[Finding]]] = {}
    for part in parts:
        for system, told in part.by_every_way.items():
            of_ways[system] = [
                [*before, *more] for before, more in zip(of_ways.get(system, [[]] * len(told)), told, strict=True)
            ]
    found = [one for id in sorted(by_rule) for one in by_rule[id]]
    found = with_alternatives(found, loaded, {system: list(map(_by_id, told)) for system, told in of_ways.items()})
    found.extend(_by_id(one for part in parts for one in part.on_offers))
    never_waived = frozenset().union(*(part.never_waived for part in parts))
    return Judged(found, [one for part in parts for one in part.stopped], never_waived, timings)


def _by_id(found: Iterable[Finding]) -> list[Finding]:
    return sorted(found, key=lambda one: one.id)
