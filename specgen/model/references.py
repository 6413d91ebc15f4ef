"""References between sources: each id that is named must exist, and what leans on something broken is left out of the specification.

Called by `parse`; `references` by the graph of what rests on what. A reference to a source that exists but is broken is no
fault of its own: the broken source has its findings.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping
from dataclasses import dataclass
from functools import cache
from typing import Any

from specgen.findings import Finding, Place
from specgen.model.field_types import IDS_SHOWN, nearest_of
from specgen.model.node import Node
from specgen.model.offer import Offer
from specgen.model.shape import shape_finding
from specgen.model.spec import LIST_KINDS
from specgen.model.system import System
from specgen.model.walk import Path, declaration, inner_record, models
from specgen.source.reader import FINDING_LIMIT

Records = Mapping[str, Mapping[str, Any]]

# A record leans only on kinds that stand before its own here, so one pass settles what is whole.
_ORDER = tuple(LIST_KINDS)


@dataclass(frozen=True, slots=True)
class Joined:
    """The records by kind: those whose references all lead to `whole` records, the `partial` ones that rest on something
    broken or lost, and the ids that are named and stand nowhere, `lost`; with a finding for each reference that leads nowhere."""

    whole: dict[str, dict[str, Any]]
    partial: dict[str, dict[str, Any]]
    lost: dict[str, set[str]]
    findings: list[Finding]


def joined(
    records: Records, ids: Mapping[str, Mapping[str, str]], place: Callable[[Path], Place], *, unread: bool
) -> Joined:
    """`ids` holds every id of the sources, broken ones too, by its lower-case form. Where a file was not read (`unread`),
    an id that stands nowhere may stand there, and is no finding. A system that names no variant of its product is in neither."""
    whole: dict[str, dict[str, Any]] = {kind: {} for kind in _ORDER}
    partial: dict[str, dict[str, Any]] = {kind: {} for kind in _ORDER}
    lost: dict[str, set[str]] = {kind: set() for kind in _ORDER}
    findings: list[Finding] = []
    for kind in _ORDER:
        for key, record in records[kind].items():
            sound = True
            for path, target_kind, target in references(record, (kind, key)):
                sound = sound and target in whole[target_kind]
                if ids[target_kind].get(target.lower()) == target:
                    continue
                lost[target_kind].add(target)
                if not unread:
                    what = f"{target} is not the id of any source in {target_kind}"
                    known = list(ids[target_kind].values()) if len(findings) <= FINDING_LIMIT else []
                    remedy = nearest_of(target, known, IDS_SHOWN) if known else ""
                    # whoever names it, one source is missing
                    findings.append(shape_finding("MOD005", path, place(path), what, remedy, cause=what))
            variants_found = list(_lost_variants(record, (kind, key), records, place))
            findings.extend(variants_found)
            if not variants_found:
                (whole if sound else partial)[kind][key] = record
    return Joined(whole, partial, lost, findings)


def references(record: Node, path: Path = ()) -> Iterator[tuple[Path, str, str]]:
    """Path of the leaf, kind and id of every source that a record names, in the order of its fields."""
    for name, kind in referring(type(record)):
        value = getattr(record, name)
        if value is None:
            continue
        if kind:
            yield (*path, name), kind, str(value)
        elif isinstance(value, Node):
            yield from references(value, (*path, name))
        else:
            for entry in value:
                yield from references(entry, (*path, name, entry.id))


@cache
def referring(model: type[Node]) -> tuple[tuple[str, str], ...]:
    """The fields that name a source, each with the kind it names, and, with no kind, those that hold such a field."""
    found: list[tuple[str, str]] = []
    for name in model.model_fields:
        inner = inner_record(model, name)
        if kind := _named_kind(model, name):
            found.append((name, kind))
        elif inner is not None and any(
            _named_kind(held, field) for held in models(inner) for field in held.model_fields
        ):
            found.append((name, ""))
    return tuple(found)


def _named_kind(model: type[Node], name: str) -> str:
    said = declaration(model, name)
    return said.refers if said is not None and said.refers in LIST_KINDS else ""


def _lost_variants(record: Node, path: Path, records: Records, place: Callable[[Path], Place]) -> Iterator[Finding]:
    """A layer, and an offer for one, names a variant of its own product."""
    if not isinstance(record, System | Offer):
        return
    for layer in record.layers:
        product = records["products"].get(layer.product or "")
        if layer.variant is None or product is None or product.variant(layer.variant) is not None:
            continue
        here = (*path, "layers", layer.id, "variant")
        known = [variant.id for variant in product.variants]
        what = f"{layer.variant} is not a variant of the product {layer.product}"
        yield shape_finding(
            "MOD005", here, place(here), what, nearest_of(layer.variant, known, IDS_SHOWN) if known else ""
        )
