"""The rules on a large folder, judged on all cores: each takes a share of the records. Called by `specgen.checking`."""

from __future__ import annotations

from datetime import date
from functools import partial
from typing import NamedTuple

from specgen.findings import Finding
from specgen.model.parse import Loaded
from specgen.model.spec import LIST_KINDS
from specgen.rules.declare import all_rules
from specgen.rules.run import Share, Stopped, Timings, found_by_rule
from specgen.side_by_side import cores, side_by_side
from specgen.standards.reads import note, recorded

_WORTH_IT = 400
"""Records from which a share of its own is quicker than the copying of the process."""


class _Judged(NamedTuple):
    by_rule: list[list[Finding]]
    stopped: list[Stopped]
    looked_into: frozenset[str]
    timings: Timings


def judged_by_all(loaded: Loaded, on: date, timings: Timings | None, stopped: list[Stopped]) -> list[Finding]:
    """The findings that `run_rules` gives on all records, in its order; `timings` adds up the seconds of all shares."""
    parts = cores() if _records(loaded) >= _WORTH_IT else 1
    works = [partial(_judged, loaded, on, Share(number, parts)) for number in range(parts)]
    judged = list(side_by_side(works, all_rules, first_here=True))
    for one in judged:
        stopped.extend(one.stopped)
        note(one.looked_into)
        if timings is not None:
            for rule, seconds in one.timings.items():
                timings[rule] = timings.get(rule, 0.0) + seconds
    return [
        one for of_rule in zip(*(part.by_rule for part in judged), strict=True) for found in of_rule for one in found
    ]


def _judged(loaded: Loaded, on: date, share: Share) -> _Judged:
    stopped: list[Stopped] = []
    timings: Timings = {}
    with recorded() as names:
        found = list(found_by_rule(loaded, on, all_rules(), timings, stopped, share=share))
    return _Judged(found, stopped, frozenset(names), timings)


def _records(loaded: Loaded) -> int:
    return sum(len(getattr(loaded.judged, kind)) for kind in LIST_KINDS) if loaded.judged is not None else 0
