"""What a record may hold, key by key, as its author sees it: what a key is for, whether it must be there, its default.

Called by `schema`, and by `specgen new`, so that neither can drift from the model.
"""

from __future__ import annotations

from dataclasses import dataclass
from enum import StrEnum
from typing import Any, get_args, get_origin

from pydantic.fields import FieldInfo

from specgen.model.field_types import Strict
from specgen.model.node import Node
from specgen.model.walk import inner_record

Default = str | tuple[str, ...] | None


@dataclass(frozen=True, slots=True)
class Key:
    """One key of a record.

    `default` is what counts where the key is absent, as an author would write it; None where nothing does. `words`
    are those of a closed list, `table` the published table whose ids it takes. `inner` is the record it holds; `many`
    says that it holds a list, of records or values.
    """

    name: str
    about: str
    required: bool
    default: Default
    words: tuple[str, ...]
    table: str
    inner: type[Node] | None
    many: bool


def outline(model: type[Node]) -> tuple[Key, ...]:
    """The keys of a record in the order of the model."""
    return tuple(_key(model, name, info) for name, info in model.model_fields.items())


def value_type(info: FieldInfo) -> Strict | None:
    """The field type of a leaf, of one value or of each value of a list; None where the field holds records."""
    return next((found for held in (*info.metadata, info.annotation) if (found := _strict(held)) is not None), None)


def _strict(held: Any) -> Strict | None:
    if isinstance(held, Strict):
        return held
    return next((found for part in get_args(held) if (found := _strict(part)) is not None), None)


def _key(model: type[Node], name: str, info: FieldInfo) -> Key:
    kind = value_type(info)
    words = tuple(kind.schema().get("enum", ())) if kind is not None else ()
    default = None if info.is_required() else as_written(info.default)
    many = get_origin(info.annotation) is tuple
    table = kind.table if kind is not None else ""
    return Key(name, info.description or "", info.is_required(), default, words, table, inner_record(model, name), many)


def as_written(value: Any) -> Default:
    """A default of the model as its author would write it; an empty list counts as nothing."""
    if value is None or value == ():
        return None
    if isinstance(value, tuple):
        return tuple(str(as_written(entry)) for entry in value)
    if isinstance(value, bool):
        return "yes" if value else "no"
    return value.value if isinstance(value, StrEnum) else str(value)
