"""The materials of a job as rows for a spreadsheet: what to order, in whole packs.

Called by `specgen.document_kinds`.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from specgen.model.job import Job
from specgen.model.spec import Spec
from specgen.plan.quantities import Quantities, quantities
from specgen.units.display import round_half_up
from specgen.views.product_variants import colour, pack
from specgen.views.wording import N_, Translate, Words

_HEADINGS = (N_("Order number"), N_("Product"), N_("Variant"), N_("Colour"), N_("Pack"), N_("Packs needed"))


@dataclass(frozen=True, slots=True)
class MaterialsList:
    """`rows` are as long as `headings`; the count of packs has no unit, so that a sheet can add it up."""

    headings: tuple[str, ...]
    rows: tuple[tuple[str, ...], ...]


def materials_list(job: Job, spec: Spec, *, translate: Translate) -> MaterialsList:
    """The view of a job that checks without errors, one row a product and variant in the order of use."""
    words = Words.of(spec.project, translate)
    headings = tuple(words(name) for name in _HEADINGS)
    return MaterialsList(headings, tuple(_rows(quantities(job, spec), spec, words)))


def _rows(figures: Quantities, spec: Spec, words: Words) -> Iterator[tuple[str, ...]]:
    for (product_id, variant_id), needed in figures.packs.items():
        product = spec.products[product_id]
        variant = product.variant(variant_id) if variant_id else None
        yield (
            variant.order_number if variant is not None else "",
            product.name,
            variant.name if variant is not None else "",
            colour(variant),
            pack(product, variant, words).replace("\N{NO-BREAK SPACE}", " "),
            str(round_half_up(needed.number, 0)),
        )
