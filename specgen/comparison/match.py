"""Which entry of the old side is which of the new one: by id, or by a declared change of id. Called by `differences`.

Where an entry stands, in its list or in which file, is no part of what it is.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from typing import Any


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
