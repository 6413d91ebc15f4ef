"""The heat that a film which cures by heat alone needs, and whether a heat that is said gives it. Called where words are judged."""

from __future__ import annotations

from collections.abc import Iterator

from specgen.facts.pairs.families import binder_family
from specgen.facts.product.drying import cures_in_heat_alone, stages_in_air
from specgen.model.drying import DryingStage
from specgen.model.product import CuringKind, Product
from specgen.units.quantity import Quantity, lower


def needs_heat(product: Product) -> bool:
    """True where nothing that the product states lets its film cure without heat."""
    stoved = product.curing is CuringKind.STOVED or binder_family(product.binder)["cure"] == "stoved"
    in_air = stages_in_air(product) & {DryingStage.THROUGH, DryingStage.FULLY_CURED}
    return cures_in_heat_alone(product) or ((stoved or bool(product.stoving)) and not in_air)


def too_little_heat(product: Product, said: Quantity, time: Quantity | None) -> str | None:
    """What the product states, where a temperature that is said, or the time at it, does not cure its film; None where it does.

    A higher temperature than any stated is taken as enough, whatever the time.
    """
    stated = sorted(_heats(product), key=lambda one: one[0].base)
    if not stated or not needs_heat(product):
        return None
    coolest, _ = stated[0]
    if said < coolest:
        return _spoken(product, stated)
    reached = [least for heat, least in stated if heat <= said]
    exact = any(heat == said for heat, _ in stated)
    if time is not None and exact and all(time < least for least in reached):
        return _spoken(product, stated)
    return None


def _heats(product: Product) -> Iterator[tuple[Quantity, Quantity]]:
    """Each temperature with the least time at it."""
    for entry in product.stoving:
        yield lower(entry.surface), lower(entry.time)
    for row in product.drying if cures_in_heat_alone(product) else ():
        if row.stage is DryingStage.FULLY_CURED and row.air is not None:
            yield lower(row.air), lower(row.time)


def _spoken(product: Product, stated: list[tuple[Quantity, Quantity]]) -> str:
    heat, time = stated[0]
    return f"{product.id} cures in {time} at {heat}"
