"""The computed figures of one product: the wet film for the comb, and the area from a can or a litre at a stated film.

Called by `data_sheet`.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from typing import TypeVar

from specgen.facts.product.comb import Comb, combs
from specgen.facts.product.coverage import Coverage, coverage
from specgen.facts.product.variants import alike, own
from specgen.model.product import Product
from specgen.model.spec import Spec
from specgen.trade.working import Working, WorkingError

Entry = TypeVar("Entry")


@dataclass(frozen=True, slots=True)
class ProductFigures:
    """`workings` holds every figure once, each before those that build on it."""

    combs: tuple[Comb, ...]
    coverage: tuple[Coverage, ...]
    workings: tuple[Working, ...]


def product_figures(product: Product, spec: Spec) -> ProductFigures:
    """All figures the product's data allow; what they do not allow is left out."""
    workings: dict[str, Working] = {}
    covered = [
        found
        for names, variant in alike(product, lambda v: (v.fill, own(v, "solids_in_can")))
        for found in _allowed(coverage(product, names, variant, workings))
    ]
    combed = [
        found
        for names, variant in alike(product, lambda v: (own(v, "per_pass"), own(v, "solids_sprayed")))
        for found in _allowed(combs(product, names, variant, spec, workings))
    ]
    return ProductFigures(tuple(combed), tuple(covered), tuple(workings.values()))


def _allowed(figures: Iterator[Entry]) -> Iterator[Entry]:
    """The figures up to the first that cannot be worked out; a rule says why, where it matters."""
    try:
        yield from figures
    except WorkingError:
        return
