"""What a product, preparation, system or published table reaches: the systems that lean on it and the jobs that lean on those.

Called by `specgen where-used`.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from typing import get_args

from specgen.model.field_types import Strict
from specgen.model.node import Node
from specgen.model.spec import LIST_KINDS, Spec
from specgen.model.walk import inner_record, leaves, models


@dataclass(frozen=True, slots=True)
class Use:
    """One record that leans on what was asked for: its address, and where in it the value stands."""

    address: str
    through: tuple[str, ...]


def uses_of_record(spec: Spec, kind: str, key: str) -> list[Use]:
    """Systems first, then jobs. Empty where nothing leans on it."""
    if kind == "products":
        found = [
            Use(f"systems.{system.id}", tuple(f"layers.{layer.id}" for layer in system.layers if layer.product == key))
            for system in spec.systems.values()
            if any(layer.product == key for layer in system.layers)
        ]
        reached = {use.address.removeprefix("systems.") for use in found}
        return found + [use for system in spec.systems if system in reached for use in _jobs_with(spec, system)]
    if kind == "systems":
        return list(_jobs_with(spec, key))
    if kind == "preparations":
        return [
            Use(f"jobs.{job.id}", tuple(f"items.{item.id}" for item in items))
            for job in spec.jobs.values()
            if (items := [i for i in job.items if (p := spec.preparation_of(job, i)) is not None and p.id == key])
        ]
    return []


def uses_of_table(spec: Spec, name: str) -> list[Use]:
    """Every record that names a row of the table, then the systems and jobs those reach, each once."""
    found: dict[str, Use] = {}
    for kind in LIST_KINDS:
        for key, record in getattr(spec, kind).items():
            through = tuple(".".join(path) for path in _values_of_table(record, name))
            if through:
                found[f"{kind}.{key}"] = Use(f"{kind}.{key}", through)
    for address in list(found):
        kind, _, key = address.partition(".")
        for use in uses_of_record(spec, kind, key):
            found.setdefault(use.address, use)
    return list(found.values())


def _jobs_with(spec: Spec, system: str) -> Iterator[Use]:
    for job in spec.jobs.values():
        items = [item for item in job.items if (s := spec.system_of(job, item)) is not None and s.id == system]
        if items:
            yield Use(f"jobs.{job.id}", tuple(f"items.{item.id}" for item in items))


def _values_of_table(record: Node, name: str) -> Iterator[tuple[str, ...]]:
    listed = {
        (model, field)
        for model in models(type(record))
        for field, info in model.model_fields.items()
        if inner_record(model, field) is None and _names_table((*info.metadata, info.annotation), name)
    }
    fields = {field for _, field in listed}
    yield from (path for path, _, _ in leaves(record) if path[-1] in fields)


def _names_table(held: object, name: str) -> bool:
    if isinstance(held, Strict):
        return held.table == name
    parts = held if isinstance(held, tuple) else get_args(held)
    return any(_names_table(part, name) for part in parts)
