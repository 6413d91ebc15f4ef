"""Variants and packs of a product as printed.

Called by `data_sheet` and `range_overview`; `order_line` by the views that list what to order.
"""

from __future__ import annotations

from typing import Literal

from specgen.documents.parts.tables import Column, TableView, table_view
from specgen.documents.parts.wording import Words
from specgen.facts.layer.film import film_of_variant
from specgen.facts.product.variants import own
from specgen.model.product import PackForm, Product, Variant


def variant_table(product: Product, words: Words) -> TableView:
    """Every variant with its order number; a film stands here only where some variant differs from the product."""
    columns = (
        Column(words("Order number"), "w-15"),
        Column(words("Variant"), "w-15"),
        Column(words("Colour")),
        Column(words("Gloss"), "w-15"),
        Column(words("Pack"), "w-12"),
        Column(words("Dry film of a cross coat"), "w-10", numeric=True),
        Column(words("Colour hides at"), "w-10", numeric=True),
    )
    rows = [
        (
            variant.order_number,
            variant.name,
            colour(variant),
            _gloss(variant, words),
            pack(product, variant, words),
            _film(product, variant, "per_pass", words),
            _film(product, variant, "hiding", words),
        )
        for variant in product.variants
    ]
    return table_view(words("Variants"), columns, rows)


def packing(product: Product, words: Words) -> tuple[tuple[str, str], ...]:
    """What the pack is and what it gives off, as (name, finished text)."""
    stated = product.pack
    form = words("aerosol can") if stated.form is PackForm.AEROSOL else words("tin")
    named = (
        (words("Pack"), form),
        (words("Contents by volume"), words.phrase(stated.fill)),
        (words("Contents by mass"), words.phrase(stated.net_mass)),
        (words("Share of the contents the pack gives off"), words.phrase(stated.delivered)),
    )
    return tuple((name, text) for name, text in named if text)


def colour(variant: Variant | None) -> str:
    """`house card 7, tile red`: the customer's standard, the number in it, and the name; empty where none is stated."""
    stated = variant.colour if variant is not None else None
    if stated is None:
        return ""
    return f"{stated.standard} {stated.number}" + (f", {stated.name}" if stated.name else "")


def pack(product: Product, variant: Variant | None, words: Words) -> str:
    """`400 mL aerosol can`."""
    fill = (variant.fill if variant is not None else None) or product.pack.fill
    form = words("aerosol can") if product.pack.form is PackForm.AEROSOL else words("tin")
    return " ".join(part for part in (words.phrase(fill), form) if part)


def order_line(product: Product, variant_id: str | None, words: Words) -> tuple[str, str, str, str, str]:
    """Order number, product, variant, colour and pack of one thing to order."""
    variant = product.variant(variant_id) if variant_id else None
    return (
        variant.order_number if variant is not None else "",
        product.name,
        variant.name if variant is not None else "",
        colour(variant),
        pack(product, variant, words),
    )


def _gloss(variant: Variant, words: Words) -> str:
    measured = words("{} at 60°").format(words.phrase(variant.gloss)) if variant.gloss is not None else ""
    return ", ".join(part for part in (variant.gloss_grade, measured) if part)


def _film(product: Product, variant: Variant, figure: Literal["per_pass", "hiding"], words: Words) -> str:
    if all(own(other, figure) is None for other in product.variants):
        return ""
    film = film_of_variant(product, variant, figure)
    return words.phrase(film.value if film is not None else None)
