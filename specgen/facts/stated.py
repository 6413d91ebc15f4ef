"""Whether an address that an author writes leads to something the sources state. Asked where an author names one."""

from __future__ import annotations

from specgen.model.node import Node
from specgen.model.spec import LIST_KINDS, Spec


def stands_at(address: str, spec: Spec) -> bool:
    """True for the address of a record, of an entry or part of one, or of a value that is stated."""
    kind, *steps = address.split(".")
    if kind == "project":
        return _within(spec.project, steps)
    if kind not in LIST_KINDS or not steps:
        return False
    record = getattr(spec, kind).get(steps[0])
    return record is not None and _within(record, steps[1:])


def _within(record: Node, steps: list[str]) -> bool:
    if not steps:
        return True
    name, *rest = steps
    if name not in type(record).model_fields or not record.states(name):
        return False
    value = getattr(record, name)
    if isinstance(value, Node):
        return _within(value, rest)
    if isinstance(value, tuple) and rest:
        entry = next((one for one in value if isinstance(one, Node) and getattr(one, "id", None) == rest[0]), None)
        return entry is not None and _within(entry, rest[1:])
    return not rest
