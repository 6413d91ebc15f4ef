"""What a record or published table reaches, as it is listed: each record that leans on it, and where in it the reason stands.

Called by `specgen where-used`.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from typing import get_args

from specgen.facts.contract.trace import traced
from specgen.facts.graph import Address, links_from, reach, sheet_links
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
    """Each record that leans on it, in the order of the sources: data sheets that tell of a neighbour first, then systems,
    then jobs. Empty where nothing does.

    A sheet that tells of the product because the product's own windows name it has the full address of those windows. With a report
    come the sheets that tell of a product that rests on it.
    """
    asked = (kind, key)
    reached = reach(spec, asked)
    found = [Use(".".join(sheet), through) for sheet, through in _sheets(spec, reached).items()]
    for kind, held in ((kind, getattr(spec, kind)) for kind in LIST_KINDS):
        for address in ((kind, one) for one in held if (kind, one) in reached and (kind, one) != asked):
            through = [link.through for link in links_from(spec, address) if link.target in reached]
            found.append(Use(".".join(address), tuple(dict.fromkeys(".".join(path) for path in through))))
    return found


def uses_of_clause(spec: Spec, document: str, clause: str) -> list[Use]:
    """Each job made to a customer's document, with the addresses that answer one of its clauses, and whether they meet it."""
    found: list[Use] = []
    for job in spec.jobs.values():
        for one in traced(job, spec):
            if one.document.id != document or clause not in {one.clause.id, one.clause.number}:
                continue
            said = [one.answer.at] if one.answer is not None and one.answer.at is not None else []
            places = [*said, *(".".join(held.path) for held in one.held)]
            found.append(Use(f"jobs.{job.id}", (one.verdict.value, *dict.fromkeys(places))))
    return found


def _sheets(spec: Spec, reached: frozenset[Address]) -> dict[Address, tuple[str, ...]]:
    """The products whose sheet tells of one of these as of a neighbour, with the windows and claims that are the reason."""
    found: dict[Address, tuple[str, ...]] = {}
    for told in (("products", one) for one in spec.products if ("products", one) in reached):
        for link in sheet_links(spec, told):
            if link.source not in reached:
                found[link.source] = (*found.get(link.source, ()), ".".join(link.through))
    return {("products", one): found["products", one] for one in spec.products if ("products", one) in found}


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
