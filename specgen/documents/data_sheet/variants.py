"""The variants of a product with their order numbers, and what its pack is. Called by `data_sheet`."""

from __future__ import annotations

from typing import Literal

from specgen.documents.parts.packs import colour, pack
from specgen.documents.parts.tables import Column, TableView, table_view
from specgen.documents.parts.wording import Words
from specgen.facts.layer.film import film_of_variant
from specgen.facts.product.variants import stated_anew
from specgen.model.product import PackForm, Product, Variant


def variant_table(product: Product, words: Words) -> TableView:
    """Every variant with its order number; pack and film stand here only where they differ from variant to variant."""
    columns = (
        Column(words("Order number"), "w-12"),
        Column(words("Variant"), "w-15"),
        Column(words("Colour")),
        Column(words("Gloss (at 60°)"), "w-15"),
        Column(words("Pack"), "w-12"),
        Column(words("DFT per cross coat"), "w-12", numeric=True),
        Column(words("DFT for full hiding"), "w-15", numeric=True),
    )
    packs = {variant.id: pack(product, variant, words) for variant in product.variants}
    coloured = any(colour(variant) for variant in product.variants)
    glossy = any(_gloss(variant, words) for variant in product.variants)
    several = set(packs.values()) != {pack(product, None, words)}
    rows = [
        (
            variant.order_number,
            variant.name,
            colour(variant) or ("–" if coloured else ""),
            _gloss(variant, words) or (words("not stated") if glossy else ""),
            packs[variant.id] if several else "",
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
        (words("Net volume"), words.phrase(stated.fill)),
        (words("Net mass"), words.phrase(stated.net_mass)),
        (words("Dispensed share of the contents"), words.phrase(stated.dispensed)),
    )
    return tuple((name, text) for name, text in named if text)


def _gloss(variant: Variant, words: Words) -> str:
    return ", ".join(part for part in (variant.gloss_grade, words.phrase(variant.gloss)) if part)


def _film(product: Product, variant: Variant, figure: Literal["per_pass", "hiding"], words: Words) -> str:
    if not stated_anew(product, figure):
        return ""
    film = film_of_variant(product, variant, figure)
    return words.phrase(film.value) if film is not None else words("not stated")
