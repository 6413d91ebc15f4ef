"""What a run could not judge and why: records with faults, and those that rest on one. Called by `specgen.checking`."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from specgen.findings import NotJudged
from specgen.model.parse import Loaded
from specgen.rules.run import Stopped

UNKNOWN = "what they rest on"


def not_judged(loaded: Loaded, stopped: Sequence[Stopped]) -> Iterator[NotJudged]:
    """Files that were not read, records with faults of their own, then those that some rule gave up on, by what it missed."""
    if loaded.unread:
        yield NotJudged(loaded.unread, "not read to the end", in_part=False)
    judged = loaded.judged
    if judged is None:
        return
    broken = [
        f"{kind}.{key}"
        for kind, ids in loaded.ids.items()
        for key in sorted(ids - {*getattr(judged, kind), *loaded.partial.get(kind, {})})
    ]
    if loaded.spec is None:
        broken.insert(0, "project")
    if broken:
        yield NotJudged(tuple(broken), f"for {'its' if len(broken) == 1 else 'their'} own faults", in_part=False)
    # what a partial record rests on is the reason, not the record
    partial = {f"{kind}.{key}" for kind, records in loaded.partial.items() for key in records}
    missed: dict[str, set[str]] = {}
    for one in stopped:
        missed.setdefault(".".join(one.path), set()).add(one.missing)
    told: dict[str, list[str]] = {}
    for address, missing in missed.items():
        grounds = sorted(missing - partial - {""}) or [UNKNOWN]
        for ground in grounds:
            told.setdefault(ground, []).append(address)
    for ground, addresses in sorted(told.items()):
        yield NotJudged(tuple(sorted(addresses)), f"for {ground} cannot be relied on", in_part=True)
