"""Which entry of the old side is which of the new one: by id, or by a declared change of id. Called by `differences`.

Where an entry stands, in its list or in which file, is no part of what it is. Entries that hold the same under two ids are
only proposed as renamed: a person declares it.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass
from typing import Any

from specgen.model.canonical import written
from specgen.model.node import Node
from specgen.model.walk import leaves


@dataclass(frozen=True, slots=True)
class Paired:
    """The entries of two lists: pairs in the order of the new list, and those on one side only.

    `order` holds the ids of the pairs in their old order, called as they are now.
    """

    pairs: tuple[tuple[Any, Any], ...]
    removed: tuple[Any, ...]
    added: tuple[Any, ...]
    order: tuple[str, ...]

    @property
    def new_order(self) -> tuple[str, ...]:
        return tuple(after.id for _, after in self.pairs)


def pair(old: Iterable[Any], new: Iterable[Any], renamed: Mapping[str, str]) -> Paired:
    """`renamed` leads from an old id to the new one; a rename whose ids are not both there, or are both on one side, is nothing."""
    before: dict[str, Any] = {entry.id: entry for entry in old}
    after: dict[str, Any] = {entry.id: entry for entry in new}
    called = {key: _now(key, before, after, renamed) for key in before}
    partner = {now: key for key, now in called.items() if now is not None}
    pairs = tuple((before[partner[key]], entry) for key, entry in after.items() if key in partner)
    removed = tuple(entry for key, entry in before.items() if called[key] is None)
    added = tuple(entry for key, entry in after.items() if key not in partner)
    return Paired(pairs, removed, added, tuple(now for now in called.values() if now is not None))


def _now(key: str, before: Mapping[str, Any], after: Mapping[str, Any], renamed: Mapping[str, str]) -> str | None:
    if key in after:
        return key
    now = renamed.get(key)
    return now if now is not None and now in after and now not in before else None


def likely_renames(removed: Sequence[Any], added: Sequence[Any]) -> list[tuple[str, str]]:
    """Old and new id of entries with the same content, where only one on each side holds it."""
    before, after = _by_content(removed), _by_content(added)
    return [
        (before[content][0].id, found[0].id)
        for content, found in after.items()
        if len(found) == 1 and len(before.get(content, ())) == 1
    ]


def _by_content(entries: Sequence[Node]) -> dict[tuple[object, ...], list[Any]]:
    found: dict[tuple[object, ...], list[Any]] = {}
    for entry in entries:
        content = tuple((path, str(written(value))) for path, value, _ in leaves(entry) if path != ("id",))
        found.setdefault((type(entry), content), []).append(entry)
    return found
