"""What holds for making a damaged place good on several items at once: the strictest of what they state. Asked by the method statement."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Literal

from specgen.facts.product.dangers import traits_of
from specgen.model.job import Item
from specgen.model.product import Product
from specgen.model.spec import Spec
from specgen.model.system import System
from specgen.units.quantity import Quantity


def harmful_dust(system: System, spec: Spec) -> tuple[Product, ...]:
    """The products of a system, each once, whose dust does harm until it has cured: isocyanate or epoxy, known or possible."""
    return tuple(product for product in spec.products_in(system) if harmful_until_cured(product))


def harmful_until_cured(product: Product) -> bool:
    """True of isocyanate and epoxy, known or possible: the dust of a film that has not cured does harm."""
    return bool({"isocyanate", "epoxy"} & traits_of(product))


def widest(ring: Literal["feather", "lap", "sanded"], items: Sequence[Item]) -> Quantity | None:
    """The widest a ring around a repair is stated, a length; None where no item states it."""
    widths = [getattr(item.repair, ring) for item in items if item.repair is not None]
    return max((width for width in widths if width is not None), default=None)


def strip_limit(items: Sequence[Item]) -> Quantity | None:
    """The least film of old and new coats together above which the old paint comes off; None where no item states one."""
    return min((item.strip_limit for item in items if item.strip_limit is not None), default=None)
