"""Storage, life and heat of a product as pairs of finished text. Called by `data_sheet`."""

from __future__ import annotations

from specgen.documents.parts.application import part_used_pack
from specgen.documents.parts.pot_life import pot_life
from specgen.documents.parts.wording import Words
from specgen.model.product import Product

Pairs = tuple[tuple[str, str], ...]


def storage(product: Product, words: Words) -> tuple[Pairs, Pairs]:
    """How long the product keeps, and what is done with a part-used can."""
    applied, hazards, pot = product.application, product.hazards, product.pot_life
    activation = applied.activation if applied is not None else None
    usable = activation.usable_for if activation is not None else None
    named = (
        (words("Shelf life, unopened"), words.phrase(product.shelf_life)),
        (words("Max. storage temperature"), words.phrase(hazards.storage_max) if hazards is not None else ""),
        (words("Usable life after activation"), words.phrase(usable)),
        (words("Pot life"), pot_life(pot, words) if pot is not None else words("not applicable")),
    )
    return tuple((n, t) for n, t in named if t), part_used_pack(product, words)


def heat(product: Product, words: Words) -> Pairs:
    """Dry heat the cured film stands, as far as it is stated."""
    stood = product.service_temperature
    if stood is None:
        return ()
    named = (
        (words("Max. continuous service temperature (dry heat)"), stood.continuous_max),
        (words("Max. peak temperature, short-term (dry heat)"), stood.short_max),
    )
    return tuple((name, words.phrase(value)) for name, value in named if value is not None)
