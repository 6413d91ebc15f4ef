"""The materials of a job as rows for a spreadsheet: what to order, in whole packs.

Called by `specgen.printing.kinds`.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from specgen.documents.parts.packs import order_line
from specgen.documents.parts.wording import Translate, Words
from specgen.facts.job.quantities import Quantities, quantities
from specgen.model.job import Job
from specgen.model.spec import Spec
from specgen.units.locale import N_
from specgen.units.rounding import round_half_up

_HEADINGS = (N_("Order number"), N_("Product"), N_("Variant"), N_("Colour"), N_("Pack"), N_("Packs needed"))


@dataclass(frozen=True, slots=True)
class MaterialsList:
    """`rows` are as long as `headings`; the count of packs has no unit, so that a sheet can add it up."""

    headings: tuple[str, ...]
    rows: tuple[tuple[str, ...], ...]


def materials_list(job: Job, spec: Spec, *, translate: Translate) -> MaterialsList:
    """The view of a job that checks without errors, one row a product and variant in the order of use."""
    words = Words.of(spec.project, translate).for_a_sheet()
    headings = tuple(words(name) for name in _HEADINGS)
    return MaterialsList(headings, tuple(_rows(quantities(job, spec), spec, words)))


def _rows(figures: Quantities, spec: Spec, words: Words) -> Iterator[tuple[str, ...]]:
    for (product, variant), needed in figures.packs.items():
        line = order_line(spec.products[product], variant, words)
        plain = (text.replace("\N{NO-BREAK SPACE}", " ") for text in line)
        yield (*plain, str(round_half_up(needed.number, 0)))
