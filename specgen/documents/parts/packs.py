"""What is ordered of a product: its colour and its pack. Called by every document that lists variants or packs."""

from __future__ import annotations

from specgen.documents.parts.wording import Words
from specgen.model.product import Colour, PackForm, Product, Variant


def colour(variant: Variant | None) -> str:
    """`house card 7, tile red`: the customer's standard, the number in it, and the name; empty where none is stated."""
    stated = variant.colour if variant is not None else None
    return colour_words(stated) if stated is not None else ""


def colour_words(stated: Colour) -> str:
    """`house card 7, tile red`."""
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
