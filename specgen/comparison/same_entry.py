"""Entries that only got another id: found by the number of their document or by what they hold. Called by `differences` and `through`.

Every id that nobody declared renamed is asked for here first, so that one entry under another id is not told as gone and new.
Where two entries of a side hold the same, neither is paired: which is which cannot be known.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping, Sequence
from typing import Any

from specgen.comparison.match import pair
from specgen.comparison.renames import Named, Renames
from specgen.model.canonical import written
from specgen.model.job import Job
from specgen.model.node import Node
from specgen.model.walk import Path, inner_fields, leaves

_NAMES = {("id",), ("document", "number")}
"""What an entry is called rather than what it is."""

Lists = Mapping[str, Sequence[Any]]
"""The entries of each kind of source."""


def renames_found(old: Lists, new: Lists, project: tuple[Node, Node], declared: Renames) -> Renames:
    """The declared changes of id with those found. What names an entry by its old id is read as naming the new one."""
    found = dict(declared)
    while True:
        known = len(found)
        for kind in old:
            _in_list((kind,), old[kind], new[kind], found)
        renames_within(("project",), *project, found)
        # a system is only seen to be the same once the product its layer names is
        if len(found) == known:
            return found


def _in_list(path: Path, old: Sequence[Any], new: Sequence[Any], found: dict[Path, str]) -> None:
    known = Named(found)
    paired = pair(old, new, known.in_list(path))
    if paired.removed and paired.added:
        for gone, come in _same(path, paired.removed, paired.added, known):
            found[*path, gone] = come
        paired = pair(old, new, Named(found).in_list(path))
    for before, after in paired.pairs:
        renames_within((*path, before.id), before, after, found)


def renames_within(path: Path, old: Node, new: Node, found: dict[Path, str]) -> None:
    """Adds to `found` the changes of id within a record, which stands at `path` on the old side."""
    for name in inner_fields(type(old)):
        before, after = getattr(old, name), getattr(new, name)
        if not before or not after or before is after:
            continue
        if isinstance(before, Node):
            renames_within((*path, name), before, after, found)
        else:
            _in_list((*path, name), before, after, found)


def _same(path: Path, removed: Sequence[Node], added: Sequence[Node], known: Named) -> Iterator[tuple[str, str]]:
    """Old and new id of the entries that are one: by the number of the document, else by all they hold."""
    numbered = dict(_only_ones(removed, added, _number, _number))
    yield from numbered.items()
    gone = [entry for entry in removed if entry.id not in numbered]  # type: ignore[attr-defined]  # every entry has an id
    come = [entry for entry in added if entry.id not in numbered.values()]  # type: ignore[attr-defined]

    yield from _only_ones(
        gone, come, lambda entry: _content(entry, path, known), lambda entry: _content(entry, path, None)
    )


def _only_ones(
    removed: Sequence[Any], added: Sequence[Any], old_key: Callable[[Any], object], new_key: Callable[[Any], object]
) -> Iterator[tuple[str, str]]:
    before, after = _by_key(removed, old_key), _by_key(added, new_key)
    for key, come in after.items():
        gone = before.get(key, [])
        if key is not None and len(come) == len(gone) == 1:
            yield gone[0].id, come[0].id


def _by_key(entries: Sequence[Any], key: Callable[[Any], object]) -> dict[object, list[Any]]:
    found: dict[object, list[Any]] = {}
    for entry in entries:
        found.setdefault(key(entry), []).append(entry)
    return found


def _number(entry: Node) -> object:
    return entry.document.number if isinstance(entry, Job) else None


def _content(entry: Any, path: Path, known: Named | None) -> object:
    """All an entry of the list at `path` states; None for one that states nothing but its names, which could be any.

    `known` are the changes of id by which one of the old side is read, None for one of the new side.
    """
    held = []
    for at, value, said in leaves(entry):
        if at not in _NAMES:
            meant = value if known is None else known.now((*path, entry.id, *at), at[-1], said, value)
            held.append((at, str(written(meant))))
    return (type(entry), tuple(held)) if held else None
