"""Where in a source file a value stands, asked by its path.

Called by the model's parser and by everything that turns a path into a finding's place. A path is a tuple of keys;
inside a list the element is the entry's `id`, or `[3]` for the entry at index 3 (counted from 0) if it has none.
"""

from __future__ import annotations

import re

from specgen.findings import Place
from specgen.source.characters import LINE_LIMIT
from specgen.source.tree import FarMark, Mapping, Mark, Node, Scalar, Sequence, SourceFile

_INDEX = re.compile(r"\[([0-9]{1,9})\]")


class Places:
    """The places of one file. Lookups cost one step an element; the ids of a list are indexed when first asked for."""

    def __init__(self, source: SourceFile) -> None:
        self.source = source
        self._ids: dict[int, dict[str, int]] = {}

    def place(self, path: tuple[str, ...]) -> Place:
        """The stretch of a value; of a group, a list or an empty value, the stretch of its key.

        If the path leads nowhere, the key of its deepest part that exists.
        """
        node, key, missing = self._follow(path)
        if missing is None and isinstance(node, Scalar) and (node.text or not node.plain):
            return self._at(node.mark)
        return self._at(key)

    def key_place(self, path: tuple[str, ...]) -> Place:
        """The stretch of the key itself; for a list entry, of its id or first key."""
        return self._at(self._follow(path)[1])

    def missing(self, path: tuple[str, ...]) -> str | None:
        """`systems.cab.layers`, if that is the first part of the path that is not there; None if all of it is."""
        at = self._follow(path)[2]
        return None if at is None else ".".join(path[: at + 1])

    def record(self, path: tuple[str, ...]) -> tuple[str, ...] | None:
        """The record a value is carried over from; None for one that its own record states, and for what is not there."""
        node, key, missing = self._follow(path)
        mark = node.mark if isinstance(node, Scalar) else key
        return mark.record if missing is None and isinstance(mark, FarMark) else None

    def _at(self, mark: Mark) -> Place:
        source = mark.source if isinstance(mark, FarMark) else self.source
        lines = source.lines
        text = lines[mark.line - 1] if mark.line <= len(lines) else ""
        shown = text if len(text) <= LINE_LIMIT else ""
        return Place(source.name, mark.line, mark.column, mark.end_column, shown)

    def _follow(self, path: tuple[str, ...]) -> tuple[Node | None, Mark, int | None]:
        """The deepest node on the path, the mark of its key, and the index of the first element that is missing."""
        node = self.source.root
        if node is None:
            return None, self._first_line(), 0 if path else None
        key = _heading(node)
        for index, element in enumerate(path):
            below: Node | None = None
            if isinstance(node, Mapping):
                below = node.entries.get(element)
                if below is not None:
                    key = node.keys[element]
            elif isinstance(node, Sequence):
                below = self._entry(node, element)
                if below is not None:
                    key = _heading(below)
            if below is None:
                return node, key, index
            node = below
        return node, key, None

    def _entry(self, sequence: Sequence, element: str) -> Node | None:
        # the tree outlives this index, so the identity of a node is a safe key
        ids = self._ids.get(id(sequence))
        if ids is None:
            ids = self._ids[id(sequence)] = _index(sequence)
        at = ids.get(element)
        if at is None and (found := _INDEX.fullmatch(element)):
            at = int(found.group(1))
        return sequence.items[at] if at is not None and at < len(sequence.items) else None

    def _first_line(self) -> Mark:
        """For a file without a tree: its first line that holds anything."""
        for number, line in enumerate(self.source.lines, start=1):
            if line.strip():
                return Mark(number, len(line) - len(line.lstrip()) + 1, len(line.rstrip()) + 1)
        return Mark(1, 1, 1)


def _index(sequence: Sequence) -> dict[str, int]:
    """Position by id; of two entries with one id the first is found."""
    positions: dict[str, int] = {}
    for position, item in enumerate(sequence.items):
        if isinstance(item, Mapping) and isinstance(name := item.entries.get("id"), Scalar) and name.text:
            positions.setdefault(name.text, position)
    return positions


def _heading(node: Node) -> Mark:
    """What names an entry that has no key of its own: its id, its first key, or itself."""
    if isinstance(node, Mapping) and node.keys:
        name = node.entries.get("id")
        if isinstance(name, Scalar) and name.text:
            return name.mark
        return next(iter(node.keys.values()))
    return node.mark
