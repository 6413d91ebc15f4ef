"""Which entries of two records stand for the same thing though their ids differ: the sanding step of one preparation and of the
one that takes its place. Called by `through`.

Ids of two records that were written apart say nothing of each other, so what is left of a list once equal ids are paired is
paired by the kind of its entries: first those that hold the same, then the others in their order.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from typing import Any

from specgen.model.canonical import written
from specgen.model.drying import Drying, OvercoatWindow, SandableAfter
from specgen.model.hazards import FirstAid, HazardClass, Protection
from specgen.model.node import Node
from specgen.model.preparation import PreparationStep
from specgen.model.product import VocCategory
from specgen.model.system import Layer
from specgen.model.walk import Path, declaration, inner_record, leaves

_KIND: dict[type[Node], str] = {
    PreparationStep: "do",
    Layer: "role",
    Drying: "stage",
    SandableAfter: "sanding",
    OvercoatWindow: "next_coat",
    Protection: "task",
    FirstAid: "route",
    HazardClass: "hazard_class",
    VocCategory: "jurisdiction",
}


def alike(old: Node, new: Node, path: Path) -> Iterator[tuple[Path, str]]:
    """Path of each entry of `old`, which stands at `path`, and the id of the one in `new` that stands for the same thing."""
    for name in type(old).model_fields:
        inner = inner_record(type(old), name)
        if declaration(type(old), name) is not None or inner is None:
            continue
        before, after = getattr(old, name), getattr(new, name)
        if isinstance(before, Node) and isinstance(after, Node):
            yield from alike(before, after, (*path, name))
        elif inner in _KIND and before and after:
            for gone, come in _paired(before, after, _KIND[inner]):
                yield (*path, name, gone.id), come.id


def _paired(old: Sequence[Any], new: Sequence[Any], kind: str) -> Iterator[tuple[Any, Any]]:
    before, after = _by_kind(old, new, kind), _by_kind(new, old, kind)
    for key, gone in before.items():
        come = after.get(key, [])
        for entry in list(gone):
            same = next((other for other in come if _content(other) == _content(entry)), None)
            if same is not None:
                gone.remove(entry)
                come.remove(same)
                yield entry, same
        yield from zip(gone, come, strict=False)


def _by_kind(entries: Sequence[Any], others: Sequence[Any], kind: str) -> dict[object, list[Any]]:
    """The entries whose id none of the others has, in their order."""
    taken = {other.id for other in others}
    found: dict[object, list[Any]] = {}
    for entry in entries:
        if entry.id not in taken:
            found.setdefault(getattr(entry, kind), []).append(entry)
    return found


def _content(entry: Node) -> tuple[object, ...]:
    return tuple((path, str(written(value))) for path, value, _ in leaves(entry) if path != ("id",))
