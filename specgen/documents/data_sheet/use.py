"""What a product may go on and over, and when the next coat may follow: only what product data say.

Called by `data_sheet`.
"""

from __future__ import annotations

from collections.abc import Iterator

from specgen.documents.parts.tables import Column, TableView, table_view
from specgen.documents.parts.wording import Words
from specgen.model.product import Drying, OvercoatWindow, Product, SandableAfter
from specgen.model.spec import Spec

# What an overcoat window may name instead of a product.
_ITSELF, _ANY = "itself", "any"


def drying_table(product: Product, words: Words) -> TableView:
    """The stages of drying and when the film may be sanded, each with the conditions it holds for."""
    columns = (
        Column(words("Drying stage"), "w-25"),
        Column(words("Time"), "w-20"),
        Column(words("Air temperature"), "w-20"),
        Column(words("Relative humidity"), "w-15"),
        Column(words("DFT"), "w-20"),
    )
    rows = [_row(words.word(entry.stage), entry, words) for entry in product.drying]
    rows += [_row(words.word(entry.sanding), entry, words) for entry in product.sandable_after]
    return table_view(words("Drying times"), columns, rows)


def overcoat_table(product: Product, spec: Spec, words: Words) -> TableView:
    """What may go on top of the product, and when."""
    columns = (
        Column(words("Next coat"), "w-25"),
        Column(words("Minimum interval"), "w-12"),
        Column(words("Maximum interval"), "w-12"),
        Column(words("Air temperature"), "w-15"),
        Column(words("If the maximum is exceeded")),
    )
    rows = [
        (_next(window, product, spec, words), *_times(window, words), window.if_exceeded or "")
        for window in product.overcoat
    ]
    return table_view(words("Overcoating intervals, from the end of the last cross coat"), columns, rows)


def over_table(product: Product, spec: Spec, words: Words) -> TableView:
    """Which products name this one as their next coat, and when they take it."""
    columns = (
        Column(words("Coat below"), "w-25"),
        Column(words("Minimum interval"), "w-12"),
        Column(words("Maximum interval"), "w-12"),
        Column(words("Air temperature"), "w-15"),
        Column(words("If the maximum is exceeded")),
    )
    return table_view(
        words("Coats that may be overcoated with this product"), columns, list(_below(product, spec, words))
    )


def _row(name: str, entry: Drying | SandableAfter, words: Words) -> tuple[str, ...]:
    conditions = (entry.humidity, entry.film)
    return (
        name[:1].upper() + name[1:],
        words.phrase(entry.time),
        words.condition(entry.air),
        *(words.phrase(value) for value in conditions),
    )


def _next(window: OvercoatWindow, product: Product, spec: Spec, words: Words) -> str:
    if window.next_coat in {_ITSELF, product.id}:
        return words("this product (second coat)")
    if window.next_coat == _ANY:
        named = any(other.next_coat != _ANY for other in product.overcoat)
        return words("any other coat in the product range") if named else words("any coat in the product range")
    return spec.products[window.next_coat].name if window.next_coat in spec.products else window.next_coat


def _times(window: OvercoatWindow, words: Words) -> tuple[str, str, str]:
    return words.low(window.interval), words.high(window.interval), words.phrase(window.air)


def _below(product: Product, spec: Spec, words: Words) -> Iterator[tuple[str, ...]]:
    for other in spec.products.values():
        for window in other.overcoat:
            if window.next_coat == product.id and other.id != product.id:
                yield other.name, *_times(window, words), window.if_exceeded or ""
