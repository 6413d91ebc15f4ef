"""VOC of the products against their limits, and what a job lets off, as printed.

Called by `method_statement`, `data_sheet` and `label_sheet`.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from datetime import date

from specgen.documents.parts.tables import Column, TableView, table_view
from specgen.documents.parts.wording import Words
from specgen.facts.product.voc_limits import limit_of
from specgen.model.product import Product, Voc, VocCategory
from specgen.trade.known import NotKnown
from specgen.trade.working import Working
from specgen.units.display import unit_sign
from specgen.units.quantity import Quantity
from specgen.units.rounding import plain_text


def voc_table(
    products: Sequence[Product], on: date, words: Words, let_off: Mapping[str, Working] | None = None
) -> TableView:
    """A row for each product and law; `let_off` is the VOC a job lets off, by product id, and "" for all of it."""
    columns = (
        Column(words("Product"), "w-25"),
        Column(words("VOC content, ready for use"), "w-15", numeric=True),
        Column(words("Regulation and category"), "w-15"),
        Column(words("Limit as at {}").format(on.isoformat()), "w-25"),
        Column(words("Max. VOC emission, this job"), "w-15", numeric=True),
    )
    rows = []
    for product in products:
        if product.voc is None:
            continue
        mass = words.worked(let_off[product.id]) if let_off is not None and product.id in let_off else ""
        laws = product.voc.categories
        for entry in laws or (None,):
            first = entry is None or entry is laws[0]
            rows.append(
                (
                    product.name,
                    *_against(product, product.voc, entry, on, words),
                    mass if first else "",
                )
            )
    if rows and let_off is not None and "" in let_off:
        rows.append((words("All products"), "", "", "", words.worked(let_off[""])))
    caption = words("Volatile organic compounds (VOC)")
    limits = [limit_of(p, entry, on) for p in products if p.voc is not None for entry in p.voc.categories]
    sources = dict.fromkeys(words(str(limit.source)) for limit in limits if limit and not isinstance(limit, NotKnown))
    if sources:
        caption = words("{caption}; limits: {sources}").format(caption=caption, sources="; ".join(sources))
    return table_view(caption, columns, rows)


def _against(product: Product, stated: Voc, entry: VocCategory | None, on: date, words: Words) -> tuple[str, str, str]:
    content = words.phrase(stated.content)
    if entry is None:
        return content, "", words("no category stated")
    law = f"{entry.jurisdiction}, {entry.category}"
    limit = limit_of(product, entry, on)
    if limit is None:
        return content, law, words("no limit of this regulation on file")
    if isinstance(limit, NotKnown):
        return content, law, words("cannot be assessed: {}").format(limit.why)
    if isinstance(limit.limit, Quantity):
        return content, law, _dated(f"{words.phrase(limit.limit)}", limit.since, words)
    reactivity = (
        f"{words.figures(plain_text(stated.reactivity))} {unit_sign(limit.unit)}"
        if stated.reactivity is not None
        else ""
    )
    return (
        reactivity,
        law,
        _dated(f"{words.figures(plain_text(limit.limit))} {unit_sign(limit.unit)}", limit.since, words),
    )


def _dated(figure: str, since: str, words: Words) -> str:
    return figure + (words(", in force since {}").format(since) if since else "")
