"""How long each stage of drying takes in the air of a job, and when the film may be sanded.

Asked by the pages on application and repair.
"""

from __future__ import annotations

from collections.abc import Callable, Sequence
from typing import TypeVar

from specgen.facts.layer.intervals import at_or_below
from specgen.model.product import Drying, Product, SandableAfter
from specgen.units.quantity import Quantity, lower

Entry = TypeVar("Entry", Drying, SandableAfter)


def drying_at(product: Product, air: Quantity | None) -> tuple[Drying, ...]:
    """One entry a stage, chosen as an overcoat window is: the nearest at or below `air`, else the coldest stated.

    Every entry where nothing is known of the air. A band of air holds from its lower end.
    """
    return _at(product.drying, lambda entry: entry.stage, air)


def sandable_at(product: Product, air: Quantity | None) -> tuple[SandableAfter, ...]:
    """One entry for dry and one for wet sanding, chosen as a stage of drying is."""
    return _at(product.sandable_after, lambda entry: entry.sanding, air)


def _at(entries: Sequence[Entry], kind: Callable[[Entry], str], air: Quantity | None) -> tuple[Entry, ...]:
    if air is None:
        return tuple(entries)
    alike: dict[str, list[Entry]] = {}
    for entry in sorted(entries, key=lambda entry: lower(entry.air)):
        alike.setdefault(kind(entry), []).append(entry)
    return tuple(entry for entry in entries if at_or_below(alike[kind(entry)], air) is entry)
