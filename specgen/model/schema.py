"""JSON Schema of a source file, for editors that complete and mark keys while one types. Called by `specgen schema`.

It describes what an editor sees, which reads YAML by version 1.2 (core schema): `3` is a number there, `yes` is text,
an empty value is null. It is milder than `specgen check`, which alone knows references, ranges and rules.
"""

from __future__ import annotations

from typing import Any

from pydantic.json_schema import GenerateJsonSchema

from specgen.model.base_named import BasedOn
from specgen.model.declaring import LEAF_KEY, PASSES_ON
from specgen.model.node import Node
from specgen.model.outline import Default, Key, outline
from specgen.model.project import Project
from specgen.model.spec import KINDS, LIST_KINDS, SINGULAR
from specgen.model.walk import models

DIALECT = "https://json-schema.org/draft/2020-12/schema"

Schema = dict[str, Any]

_NOTHING = {"type": "null"}
# the record of the kind asked for, where it is based on another
BASED = "based on another"


class _Untitled(GenerateJsonSchema):
    """Without the titles pydantic makes up from the names of fields."""

    def field_title_should_be_set(self, schema: Any) -> bool:  # noqa: ARG002  # pydantic asks for each field
        return False


def schema(kind: str) -> Schema:
    """The schema of a file that holds `kind`, one of `SINGULAR`: that kind in full, any other kind beside it unchecked.

    Raises KeyError for another word.
    """
    block = SINGULAR[kind]
    model = KINDS[block]
    raw = model.model_json_schema(ref_template="#/$defs/{model}", schema_generator=_Untitled)
    defs: Schema = raw.pop("$defs", {})
    # pydantic writes the record asked for at the top, unless it holds itself
    defs.setdefault(model.__name__, raw)
    by_name = {known.__name__: known for known in models(model)}
    return {
        "$schema": DIALECT,
        "title": f"specgen source holding {block}",
        "type": "object",
        "additionalProperties": False,
        "required": [block],
        "properties": {name: _block(name, block, model) for name in KINDS},
        "$defs": {name: _record(defs[name], by_name[name]) for name in sorted(by_name)}
        | ({} if block not in LIST_KINDS else {BASED: _based(defs[model.__name__], model)}),
    }


def _block(name: str, chosen: str, model: type[Node]) -> Schema:
    if name != chosen:
        word = next(word for word, block in SINGULAR.items() if block == name)
        held = "object" if name == "project" else "array"
        return {"type": [held, "null"], "description": f"described by `specgen schema {word}`"}
    record = {"$ref": f"#/$defs/{model.__name__}"}
    if name == "project":
        return record
    if name not in LIST_KINDS:
        return {"type": "array", "items": record}
    based = {"$ref": f"#/$defs/{BASED}"}
    return {"type": "array", "items": {"if": {"required": ["based_on"]}, "then": based, "else": record}}


def _based(raw: Schema, model: type[Node]) -> Schema:
    """A record that is based on another: every key may be left out, and so may every key of its groups and entries, which are not
    looked into."""
    how = BasedOn.model_json_schema(schema_generator=_Untitled)["properties"]
    said = {key.name: _property(how[key.name], False, key.default) for key in outline(BasedOn)}
    written = _record(raw, model)["properties"]
    held = {
        key.name: _unread(written[key.name], key) if key.inner is not None else written[key.name]
        for key in outline(model)
    }
    name = next(iter(held))
    return {
        "type": "object",
        "description": "A record that is based on another.",
        "additionalProperties": False,
        "properties": {name: held.pop(name), **said, **held},
        "required": [name],
    }


def _unread(written: Schema, key: Key) -> Schema:
    return {"description": written["description"], "type": ["array" if key.many else "object", "null"]}


def _record(raw: Schema, model: type[Node]) -> Schema:
    keys = outline(model)
    written: Schema = {
        "type": "object",
        "description": raw.get("description", ""),
        "additionalProperties": False,
        "properties": {key.name: _property(raw["properties"][key.name], key.required, key.default) for key in keys},
    }
    required = [key.name for key in keys if key.required]
    if model is Project:
        # who makes the products may be left to the range
        required.remove("maker")
        written["anyOf"] = [{"required": ["maker"]}, {"required": ["range"]}]
    return {**written, "required": required} if required else written


def _property(raw: Schema, required: bool, default: Default) -> Schema:
    about = raw.get("description", "")
    held = {key: value for key, value in raw.items() if key not in {"description", "default", LEAF_KEY, PASSES_ON}}
    # an empty value is a note for `check`, not a fault
    written = {"description": about, **(held if required else _or_nothing(held))}
    if default is not None:
        written["default"] = _default(default, whole=raw.get("type") == "integer")
    return written


def _or_nothing(held: Schema) -> Schema:
    """The same and null. Said without `anyOf` where it can be, for editors tell little about a failed alternative."""
    stated = [one for one in held.get("anyOf", [held]) if one != _NOTHING]
    if len(stated) == 1 and "enum" in stated[0]:
        return {**stated[0], "enum": [*stated[0]["enum"], None]}
    if len(stated) == 1 and "type" in stated[0]:
        kinds = stated[0]["type"]
        return {**stated[0], "type": [*(kinds if isinstance(kinds, list) else [kinds]), "null"]}
    return {"anyOf": [*stated, _NOTHING]}


def _default(default: str | tuple[str, ...], *, whole: bool) -> Any:
    if isinstance(default, tuple):
        return list(default)
    return int(default) if whole else default
