"""Variants of a product that give the same figure, told apart only where they give different ones.

Called by `coverage`, `comb` and `product_figures`.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator
from typing import Any

from specgen.model.product import Product, Variant
from specgen.trade.given import Source
from specgen.trade.working import Working
from specgen.units.quantity import Quantity

OF_A_VARIANT = ("per_pass", "hiding")
"""The films a variant may state anew."""


def own(variant: Variant, name: str) -> Quantity | None:
    """The leaf of its product that a variant states anew; None where it states nothing."""
    return getattr(variant.overrides, name) if variant.overrides is not None else None


def stated_anew(product: Product, name: str) -> bool:
    """True where a variant states that leaf of its product anew, so that one figure does not hold for all of them."""
    return any(own(variant, name) is not None for variant in product.variants)


def alike(product: Product, key: Callable[[Variant], Any]) -> Iterator[tuple[str, Variant]]:
    """The first of each set of variants with an equal `key`, with the names of its set where there are several sets."""
    sets: dict[Any, list[Variant]] = {}
    for variant in product.variants:
        sets.setdefault(key(variant), []).append(variant)
    for alike in sets.values():
        yield ", ".join(variant.name for variant in alike) if len(sets) > 1 else "", alike[0]


def subject(product: Product, names: str, variant: Variant) -> str:
    """What a figure is about, for the id of its working; `names` as given by `alike`."""
    return f"{product.id}.{variant.id}" if names else product.id


def keep(source: Source | None, workings: dict[str, Working]) -> None:
    """Put a source among the workings, once, where it is one."""
    if isinstance(source, Working) and workings.setdefault(source.id, source) != source:
        raise ValueError(f"two figures of the sheet are called {source.id}")
