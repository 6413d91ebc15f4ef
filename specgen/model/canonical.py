"""The specification as canonical JSON: what was stated, as text, in a fixed order; absent stays absent and no default is written.

Two sources that say the same give the same bytes. The customer edition leaves out what is the maker's.
"""

from __future__ import annotations

import json
from datetime import date
from enum import StrEnum
from fractions import Fraction
from typing import Any

from specgen.model.audience import customer_path
from specgen.model.declaring import PATH, Audience
from specgen.model.node import Node
from specgen.model.project import SCHEMA_VERSION
from specgen.model.spec import LIST_KINDS, Spec
from specgen.model.walk import declaration
from specgen.units.rounding import plain_text

Json = dict[str, Any] | list[Any] | str


def canonical(spec: Spec, audience: Audience = Audience.MAKER) -> str:
    """JSON text with sorted keys; `audience` CUSTOMER leaves out every leaf of the maker's."""
    whole: dict[str, Any] = {"schema_version": str(SCHEMA_VERSION), "project": _record(spec.project, audience)}
    for kind in LIST_KINDS:
        whole[kind] = {key: _record(entry, audience) for key, entry in getattr(spec, kind).items()}
    return json.dumps(whole, sort_keys=True, ensure_ascii=False, indent=1) + "\n"


def _record(node: Node, audience: Audience) -> dict[str, Json]:
    stated: dict[str, Json] = {}
    for name in type(node).model_fields:
        if not node.states(name):
            continue
        said = declaration(type(node), name)
        value = getattr(node, name)
        if said is not None:
            if audience is Audience.MAKER or said.audience is Audience.CUSTOMER:
                cut = said.refers == PATH and audience is Audience.CUSTOMER
                stated[name] = customer_path(value) if cut else written(value)
        elif isinstance(value, Node):
            stated[name] = _record(value, audience)
        else:
            kept = [_record(entry, audience) for entry in value]
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
