"""All products of a folder side by side on one page, for choosing.

The template `range_overview/document.html.j2` prints it. What differs by conditions carries its conditions in the cell.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from specgen.documents.context import Context
from specgen.documents.parts.packs import pack
from specgen.documents.parts.parties import PartyView, party
from specgen.documents.parts.pot_life import pot_life
from specgen.documents.parts.tables import Column, TableView, table_view
from specgen.documents.parts.wording import Words
from specgen.facts.product.handling import USUAL_AIR, handling
from specgen.model.product import Product
from specgen.model.spec import Spec


@dataclass(frozen=True, slots=True, kw_only=True)
class RangeOverview:
    """The whole document."""

    number: str
    title: str
    maker: PartyView
    on: str
    products: TableView
    program: str


def range_overview(spec: Spec, context: Context) -> RangeOverview:
    """The view of a folder that checks without errors."""
    words = context.words
    columns = (
        Column(words("Product"), "w-12"),
        Column(words("Curing"), "w-10"),
        Column(words("Use as"), "w-8"),
        Column(words("Direct to metal (DTM)"), "w-5"),
        Column(words("DFT min."), "w-8", numeric=True),
        Column(words("DFT nominal"), "w-8", numeric=True),
        Column(words("DFT max."), "w-8", numeric=True),
        Column(words("Dry to handle at about {}").format(words.phrase(USUAL_AIR)), "w-10"),
        Column(words("Max. continuous service temperature (dry heat)"), "w-8", numeric=True),
        Column(words("Shelf life, unopened"), "w-8"),
        Column(words("Pot life")),
        Column(words("Pack"), "w-8"),
    )
    rows = [tuple(_row(product, words)) for product in spec.products.values()]
    return RangeOverview(
        number=f"RO-{spec.project.id}",
        title=words("Product range"),
        maker=party(spec.project.maker),
        on=context.day.isoformat(),
        products=table_view(words("Product comparison"), columns, rows),
        program=context.program,
    )


def _row(product: Product, words: Words) -> Iterator[str]:
    film, stood = product.film, product.service_temperature
    yield product.name
    yield words.word(product.curing)
    yield ", ".join(words.word(role) for role in product.roles)
    yield words("yes") if product.direct_to_metal else words("no")
    yield from (words.phrase(limit) for limit in (film.min, film.nominal, film.max))
    yield _handling(product, words)
    yield words.phrase(stood.continuous_max) if stood is not None else ""
    yield words.phrase(product.shelf_life)
    pot = product.pot_life
    yield pot_life(pot, words) if pot is not None else words("not applicable")
    packs = dict.fromkeys(pack(product, variant, words) for variant in product.variants)
    yield ", ".join(packs)


def _handling(product: Product, words: Words) -> str:
    """The time to handle nearest to 20 degC, with its conditions."""
    first = handling(product)
    if first is None:
        return ""
    return words.at(first.time, first.air, first.humidity, first.film)
