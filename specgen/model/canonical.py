"""The specification as canonical JSON: what was stated, as text, in a fixed order; absent stays absent and no default is written.

Two sources that say the same give the same bytes. The customer edition leaves out what is the maker's.
"""

from __future__ import annotations

import json
from datetime import date
from enum import StrEnum
from fractions import Fraction
from typing import Any

from specgen.model import format_1
from specgen.model.audience import customer_path
from specgen.model.declaring import PATH, Audience
from specgen.model.node import Node
from specgen.model.project import SCHEMA_VERSION
from specgen.model.spec import LIST_KINDS, Spec
from specgen.model.walk import declaration
from specgen.units.rounding import plain_text

Json = dict[str, Any] | list[Any] | str


# says how the text is to be read, so it stands at the head of the whole and not among what is stated
_VERSION = "schema_version"
# kinds of record that came after the first specifications were approved
_LATER = {"concessions", "offers", "reports", "contract_documents"}


def canonical(spec: Spec, audience: Audience = Audience.MAKER, *, content: bool = False) -> str:
    """JSON text with sorted keys; `audience` CUSTOMER leaves out every leaf of the maker's, `content` what is administrative."""
    return text_of(model_of(spec, audience, content=content))


def model_of(spec: Spec, audience: Audience = Audience.MAKER, *, content: bool = False) -> dict[str, Any]:
    """What `canonical` writes, before it is text."""
    project = _record(spec.project, audience, content)
    project.pop(_VERSION, None)
    whole: dict[str, Any] = {_VERSION: str(SCHEMA_VERSION), "project": project}
    for kind in LIST_KINDS:
        held = {key: _record(entry, audience, content) for key, entry in getattr(spec, kind).items()}
        # what was approved before there were such records is approved still
        if held or kind not in _LATER:
            whole[kind] = held
    return whole


def record_of(record: Node) -> dict[str, Any]:
    """What one record states, the maker's own among it."""
    return dict(_record(record, Audience.MAKER, content=False))


def as_first_written(model: dict[str, Any], *, stated: bool) -> dict[str, Any]:
    """A model as format 1 wrote it, with the version among what the project states or without."""
    first = format_1.restored(model) | {_VERSION: str(format_1.NUMBER)}
    if stated:
        first["project"] = {**first["project"], _VERSION: str(format_1.NUMBER)}
    return first


def text_of(model: dict[str, Any]) -> str:
    return json.dumps(model, sort_keys=True, ensure_ascii=False, indent=1) + "\n"


def _record(node: Node, audience: Audience, content: bool) -> dict[str, Json]:
    stated: dict[str, Json] = {}
    for name in type(node).model_fields:
        if not node.states(name):
            continue
        said = declaration(type(node), name)
        value = getattr(node, name)
        if said is not None:
            if (audience is Audience.MAKER or said.audience is Audience.CUSTOMER) and not (
                content and said.administrative
            ):
                cut = said.refers == PATH and audience is Audience.CUSTOMER
                stated[name] = customer_path(value) if cut else written(value)
        elif isinstance(value, Node):
            inner = _record(value, audience, content)
            # a group of which nothing is left but what is administrative is no content either
            if inner or not (content and value.model_fields_set):
                stated[name] = inner
        else:
            kept = [_record(entry, audience, content) for entry in value]
            if any(kept):
                stated[name] = [entry for entry in kept if entry]
    return stated


def written(value: Any) -> Json:
    """One value as text, a list of values as a list of texts."""
    if isinstance(value, tuple) and all(isinstance(v, Fraction) for v in value):
        return ":".join(plain_text(v) for v in value)
    if isinstance(value, tuple):
        return [written(v) for v in value]
    if isinstance(value, bool):
        return "yes" if value else "no"
    if isinstance(value, Fraction):
        return plain_text(value)
    if isinstance(value, date):
        return value.isoformat()
    return value.value if isinstance(value, StrEnum) else str(value)
