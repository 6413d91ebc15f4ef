"""The places of sources where a file beside them is named, one by one. Called by `pictured` and `kept`, before records are read."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Mapping
from dataclasses import replace
from functools import cache

from specgen.model.field_types import Strict
from specgen.model.node import Node
from specgen.model.outline import value_type
from specgen.model.shape import entry_name
from specgen.model.spec import KINDS
from specgen.model.walk import Path, inner_record
from specgen.source.places import Places
from specgen.source.tree import Mapping as Group
from specgen.source.tree import Node as Tree
from specgen.source.tree import Scalar, Sequence, SourceFile

Visit = Callable[[Scalar, Path, Places], Scalar]
"""From the name as stated, its path and places, to what stands there from then on."""


def visited(files: Iterable[SourceFile], kind: Strict, visit: Visit) -> tuple[SourceFile, ...]:
    """The files with what `visit` makes of every name of the kind; what the kind refuses is told where its record is read."""
    return tuple(_file(file, kind, visit) for file in files)


@cache
def _leads(model: type[Node], kind: Strict) -> Mapping[str, type[Node] | None]:
    """The keys of a record below which such a file may be named, with the record they hold; None for the name itself."""
    found: dict[str, type[Node] | None] = {}
    for name, info in model.model_fields.items():
        inner = inner_record(model, name)
        if inner is None:
            if value_type(info) is kind:
                found[name] = None
        elif _leads(inner, kind):
            found[name] = inner
    return found


def _file(file: SourceFile, kind: Strict, visit: Visit) -> SourceFile:
    if not isinstance(file.root, Group):
        return file
    places, entries = Places(file), dict(file.root.entries)
    for block, model in KINDS.items():
        if block in entries and _leads(model, kind):
            entries[block] = _below(entries[block], model, (block,), places, kind, visit)
    return replace(file, root=replace(file.root, entries=entries))


def _below(tree: Tree, model: type[Node], path: Path, places: Places, kind: Strict, visit: Visit) -> Tree:
    if isinstance(tree, Sequence):
        items = (
            _below(item, model, (*path, entry_name(item, at)), places, kind, visit)
            for at, item in enumerate(tree.items)
        )
        return replace(tree, items=tuple(items))
    if not isinstance(tree, Group):
        return tree
    entries = dict(tree.entries)
    for name, inner in _leads(model, kind).items():
        here, held = (*path, name), entries.get(name)
        if held is not None and inner is not None:
            entries[name] = _below(held, inner, here, places, kind, visit)
        elif isinstance(held, Scalar) and _reads(kind, held.text):
            entries[name] = visit(held, here, places)
    return replace(tree, entries=entries)


def _reads(kind: Strict, text: str) -> bool:
    try:
        kind.parse(text)
    except ValueError:
        return False
    return True
