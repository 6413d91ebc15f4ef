"""Every leaf of a record with its path and its declaration. Called by the canonical form, by comparison, and by tests of the model."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from functools import cache
from typing import Any, get_args

from specgen.model.declaring import LEAF_KEY, Audience, Concern, Polarity
from specgen.model.node import Node

Path = tuple[str, ...]


@dataclass(frozen=True, slots=True)
class Declared:
    """What `declaring.leaf` says of a field."""

    polarity: Polarity
    concern: Concern
    audience: Audience
    refers: str
    administrative: bool


@cache
def declaration(model: type[Node], name: str) -> Declared | None:
    """The declaration of a field, or None where the field holds further fields."""
    extra = model.model_fields[name].json_schema_extra
    if not isinstance(extra, dict) or LEAF_KEY not in extra:
        return None
    said = extra[LEAF_KEY]
    if not isinstance(said, dict):
        raise TypeError(f"{model.__name__}.{name} is declared with something else than `leaf`")
    return Declared(
        Polarity(str(said["polarity"])),
        Concern(str(said["concern"])),
        Audience(str(said["audience"])),
        str(said["refers"]),
        bool(said["administrative"]),
    )


@cache
def inner_record(model: type[Node], name: str) -> type[Node] | None:
    """The record a field holds, alone or as entries of a list; None for a leaf."""
    return _find_node(model.model_fields[name].annotation)


def _find_node(annotation: Any) -> type[Node] | None:
    if isinstance(annotation, type) and issubclass(annotation, Node):
        return annotation
    return next((found for arg in get_args(annotation) if (found := _find_node(arg)) is not None), None)


@cache
def _fields(model: type[Node]) -> tuple[tuple[str, Declared | None], ...]:
    return tuple((name, declaration(model, name)) for name in model.model_fields)


@cache
def inner_fields(model: type[Node]) -> tuple[str, ...]:
    """The fields that hold records."""
    return tuple(name for name in model.model_fields if inner_record(model, name) is not None)


def leaves(node: Node, path: Path = ()) -> Iterator[tuple[Path, Any, Declared]]:
    """Path, value and declaration of every leaf the source states; absent leaves are absent."""
    found: list[tuple[Path, Any, Declared]] = []
    _gather(node, path, found)
    return iter(found)


def _gather(node: Node, path: Path, found: list[tuple[Path, Any, Declared]]) -> None:
    """Put the leaves together in one list: to hand each up through the generators of all levels takes twice as long."""
    stated = node.model_fields_set
    for name, said in _fields(type(node)):
        if name not in stated:
            continue
        value = getattr(node, name)
        if said is not None:
            found.append(((*path, name), value, said))
        elif isinstance(value, Node):
            _gather(value, (*path, name), found)
        else:
            for entry in value or ():
                _gather(entry, (*path, name, entry.id), found)


def records(node: Node, path: Path = ()) -> Iterator[tuple[Path, Node]]:
    """The record and every record within it, each with its path."""
    yield path, node
    for name in inner_fields(type(node)):
        value = getattr(node, name)
        if isinstance(value, Node):
            yield from records(value, (*path, name))
        else:
            for entry in value or ():
                yield from records(entry, (*path, name, entry.id))


def models(root: type[Node]) -> Iterator[type[Node]]:
    """The record and every record it can hold, each once."""
    seen: set[type[Node]] = set()
    waiting = [root]
    while waiting:
        model = waiting.pop()
        if model in seen:
            continue
        seen.add(model)
        yield model
        waiting.extend(found for name in model.model_fields if (found := inner_record(model, name)) is not None)
