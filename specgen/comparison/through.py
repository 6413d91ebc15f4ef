"""What a reference that leads elsewhere changes: the record it led to is walked against the one it leads to. Called by `compare`.

What is reached so leads on: a system that takes the place of another brings layers with other products, and those are walked too.
References that swap the same two records are one swap, told once for all the items they reach. A change within a record that
stands on both sides is told at the record; a swap sets what was reached before against what is reached now.
"""

from __future__ import annotations

import hashlib
import json
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, field, replace
from typing import Any

from specgen.comparison.alike import alike
from specgen.comparison.changes import Difference, Kind, Owner, Reached
from specgen.comparison.differences import between
from specgen.comparison.policy import INHERITED
from specgen.comparison.reach import reached
from specgen.comparison.renames import Renames
from specgen.comparison.same_entry import renames_within
from specgen.facts.graph import PROJECT, Address, closure
from specgen.facts.memo import memoised
from specgen.model.canonical import written
from specgen.model.drying import OvercoatWindow
from specgen.model.job import Item, Job, Ordered
from specgen.model.node import Node
from specgen.model.spec import LIST_KINDS, Spec
from specgen.model.system import Layer
from specgen.model.walk import Path, leaves

_OF_A_PRODUCT = (Layer, Ordered)
"""What names a product and one of its variants."""

_At = tuple[Path, Node]
"""A record and where it stands."""


@dataclass(slots=True)
class Swap:
    """Two records, one in the place of the other, the references that lead from the one to the other, and what differs.

    `new` is None where nothing takes the place, `old` where the place was empty.
    """

    old: _At | None
    new: _At | None
    references: list[Difference] = field(default_factory=list)
    differences: list[Difference] = field(default_factory=list)


def swaps(old: Spec, new: Spec, found: Sequence[Difference], renames: Renames) -> list[Swap]:
    """The swaps among the differences and, through those, further on; each two records once."""
    known: dict[tuple[Path, Path], Swap] = {}
    waiting = list(found)
    for fact in waiting:
        ends = _ends(fact, old, new, renames)
        if ends is None:
            continue
        before, after = ends
        key = (before[0] if before else (), after[0] if after else ())
        if key not in known:
            known[key] = swap = Swap(before, after)
            swap.differences = _between(before, after, renames)
            # a list that grows while it is walked: what is reached leads on
            waiting.extend(swap.differences)
        known[key].references.append(fact)
    return list(known.values())


def _between(old: _At | None, new: _At | None, renames: Renames) -> list[Difference]:
    path, record = old or new or ((), None)
    before, after = (end[1] if end else None for end in (old, new))
    if record is None:
        raise ValueError("a swap has a record on one side at least")
    paths = (old[0] if old else path, new[0] if new else path)
    called = dict(renames)
    if before is not None and after is not None:
        called |= alike(before, after, paths[0])
        renames_within(paths[0], before, after, called)
    owner = Owner(path[-2], paths[1][-1], before, after)
    mark = (".".join(paths[0]) if old else "", ".".join(paths[1]) if new else "")
    found = between(before, after, paths, owner, called)
    # of two records that were written apart nobody called an entry otherwise
    return [replace(fact, through=mark) for fact in found if fact.kind is not Kind.RENAMED]


def _ends(fact: Difference, old: Spec, new: Spec, renames: Renames) -> tuple[_At | None, _At | None] | None:
    """The records a difference in a reference leads to on the two sides; None for any other, and where they are one."""
    holder = fact.owners[-1]
    model = type(holder.record)
    if fact.kind in {Kind.RENAMED, Kind.REORDERED} or fact.name not in model.model_fields:
        return None
    if fact.name == "variant" and model in _OF_A_PRODUCT:
        before, after = _variant(holder.old, old), _variant(holder.new, new)
    elif fact.refers in LIST_KINDS and model is not OvercoatWindow:
        before = _record(old, fact.refers, in_force(fact, fact.owners[0].old, fact.old))
        after = _record(new, fact.refers, in_force(fact, fact.owners[0].new, fact.new))
    else:
        return None
    if before is None and after is None:
        return None
    return None if before and after and _now(before[0], renames) == after[0] else (before, after)


def _now(path: Path, renames: Renames) -> Path:
    """The path of a record with the ids it is called by on the new side."""
    return (*(renames.get(path[: at + 1], step) for at, step in enumerate(path)),)


def in_force(fact: Difference, above: Node | None, stated: Any) -> Any:
    """The value of a reference on one side: an item that states none has its job's."""
    if stated is None and (type(fact.owners[-1].record), fact.name) in INHERITED and isinstance(above, Job):
        return getattr(above, fact.name, None)
    return stated


def _record(spec: Spec, kind: str, key: Any) -> _At | None:
    record = getattr(spec, kind).get(key)
    return ((kind, str(key)), record) if record is not None else None


def _variant(holder: Node | None, spec: Spec) -> _At | None:
    if not isinstance(holder, _OF_A_PRODUCT) or not holder.variant:
        return None
    product = spec.products.get(holder.product or "")
    variant = product.variant(holder.variant) if product is not None else None
    if product is None or variant is None:
        return None
    return ("products", product.id, "variants", variant.id), variant


def reached_by(swap: Swap, all_swaps: Mapping[tuple[str, str], Swap], old: Spec, new: Spec) -> tuple[Reached, ...]:
    """The jobs and items that get the one record in the place of the other."""
    items: dict[str, list[str]] = {}
    for number, item in _items(swap, all_swaps, old, new, set()):
        listed = items.setdefault(number, [])
        if item and item not in listed:
            listed.append(item)
    return tuple(Reached(number, tuple(listed)) for number, listed in items.items())


def _items(
    swap: Swap, all_swaps: Mapping[tuple[str, str], Swap], old: Spec, new: Spec, seen: set[int]
) -> Iterator[tuple[str, str]]:
    if id(swap) in seen:
        return
    seen.add(id(swap))
    for fact in swap.references:
        job = fact.owners[0].record
        if fact.through is not None:
            yield from _items(all_swaps[fact.through], all_swaps, old, new, seen)
        elif isinstance(job, Job):
            number = job.document.number
            last = fact.owners[-1].record
            if isinstance(last, Item):
                yield number, last.id
            else:
                yield number, ""
                yield from ((number, item.id) for item in job.items if getattr(item, fact.name, "") is None)
        else:
            spec, path = (new, fact.path) if fact.owners[0].new is not None else (old, fact.old_path)
            for entry in reached(spec, path):
                yield entry.number, ""
                yield from ((entry.number, item) for item in entry.items)


def content_of(fact: Difference, old: Spec, new: Spec) -> list[str]:
    """A digest of all that a reference leads to, on each side; empty for any other value."""
    holder = fact.owners[-1]
    if fact.name == "variant" and isinstance(holder.record, _OF_A_PRODUCT):
        kind, keys = "products", [getattr(side, "product", None) for side in (holder.old, holder.new)]
    elif fact.refers in LIST_KINDS:
        first = fact.owners[0]
        kind, keys = (
            fact.refers,
            [in_force(fact, first.old, fact.old), in_force(fact, first.new, fact.new)],
        )
    else:
        return []
    return [
        _digest(spec, (kind, str(key))) if key in getattr(spec, kind) else ""
        for spec, key in zip((old, new), keys, strict=True)
    ]


@memoised
def _digest(spec: Spec, address: Address) -> str:
    whole = [
        [kind, key, [[".".join(path), written(value)] for path, value, _ in leaves(getattr(spec, kind)[key])]]
        for kind, key in sorted(closure(spec, address) - {PROJECT})
        if key in getattr(spec, kind)
    ]
    return hashlib.sha256(json.dumps(whole, ensure_ascii=False).encode()).hexdigest()
