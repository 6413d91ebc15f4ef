"""Values that name an entry by its id follow it where its id changed. Called by `differences`, `same_entry` and `compare`.

A layer that names the product by its new id, an inspection point that names the item by its new one: nothing changed in them.
"""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from specgen.model.declaring import PATH
from specgen.model.spec import LIST_KINDS
from specgen.model.walk import Declared, Path

Renames = Mapping[Path, str]
"""From the path of an entry on the old side to its new id: `("systems", "cab", "layers", "primer")` to `base`."""

# Leaves that name an entry inside a record which other leaves tell: a layer of the system, a variant of the product.
_INNER = {"after": "layers", "variant": "variants"}


class Named:
    """Changes of id, by the list they stand in."""

    def __init__(self, renames: Renames) -> None:
        self._renames = renames
        self._lists: dict[Path, dict[str, str]] = {}
        for path, now in renames.items():
            self._lists.setdefault(path[:-1], {})[path[-1]] = now
        self.any = bool(renames)

    def in_list(self, path: Path) -> Mapping[str, str]:
        """The new id of each renamed entry of a list, by its old one."""
        return self._lists.get(path, {})

    def now(self, path: Path, name: str, said: Declared, old: Any) -> Any:
        """The old value of the leaf `name` at a path of the old side, with what it names called as on the new one."""
        if isinstance(old, tuple) and name == "items" and path[0] == "jobs":
            items = self.in_list((*path[:2], "items"))
            return tuple(items.get(entry, entry) for entry in old)
        if not isinstance(old, str):
            return old
        if said.refers == PATH:
            return self.address(old)
        if said.refers in LIST_KINDS or name == "next_coat":
            return self.in_list((said.refers or "products",)).get(old, old)
        inner = _INNER.get(name)
        found = (renamed[old] for path, renamed in self._lists.items() if path[-1] == inner and old in renamed)
        return next(found, old)

    def address(self, old: str) -> str:
        """An address of the old side with every renamed step in it called anew."""
        steps = old.split(".")
        return ".".join(self._renames.get(tuple(steps[: at + 1]), step) for at, step in enumerate(steps))
