"""How long each stage of drying takes in the air of a job. Asked by the pages on application and repair."""

from __future__ import annotations

from specgen.facts.layer.intervals import at_or_below
from specgen.model.product import Drying, DryingStage, Product
from specgen.units.quantity import Quantity


def drying_at(product: Product, air: Quantity | None) -> tuple[Drying, ...]:
    """One entry a stage, chosen as an overcoat window is: the nearest at or below `air`, else the coldest stated.

    Every entry where nothing is known of the air.
    """
    if air is None:
        return product.drying
    stages: dict[DryingStage, list[Drying]] = {}
    for entry in sorted(product.drying, key=lambda entry: entry.air):
        stages.setdefault(entry.stage, []).append(entry)
    return tuple(entry for entry in product.drying if at_or_below(stages[entry.stage], air) is entry)
