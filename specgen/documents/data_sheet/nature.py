"""What a product is, what it may be used as, and the figures looked for first. Called by `data_sheet`."""

from __future__ import annotations

from collections.abc import Iterator

from specgen.documents.data_sheet.goes_over import preparation_of_steel
from specgen.documents.parts.application import cure
from specgen.documents.parts.wording import Words
from specgen.facts.pairs.families import paint_name
from specgen.facts.product.handling import handling
from specgen.model.product import Product
from specgen.standards.tables import table


def nature(product: Product, words: Words) -> Iterator[tuple[str, str]]:
    """What it is made of and how it hardens, as (name, finished text)."""
    yield words("Binder"), words(table("binder_families").row("id", product.binder)["name"])
    yield words("Curing"), words.word(product.curing)
    yield from cure(product, words)
    if product.formulated is not None:
        yield words("Formulation as of"), product.formulated.isoformat()


def use(product: Product, words: Words) -> Iterator[tuple[str, str]]:
    """Which coats it may be, and whether it may be the first, as (name, finished text)."""
    yield words("Use as"), ", ".join(words.word(role) for role in product.roles)
    yield (
        words("Direct to metal (DTM)"),
        words("yes") if product.direct_to_metal else words("no, over an existing coat only"),
    )
    for name, families in (
        (words("May be applied over"), product.may_go_over),
        (words("Not to be applied over"), product.not_over),
    ):
        if families:
            yield name, ", ".join(words(paint_name(family)) for family in families)
    least = preparation_of_steel(product, words)
    if least:
        yield words("Minimum surface preparation, bare steel"), least


def key_figures(product: Product, words: Words) -> Iterator[tuple[str, str]]:
    """The four figures looked for first, each only where it is stated."""
    film, heat_stood = product.film, product.service_temperature
    if film.nominal is not None:
        yield words("Dry film thickness (DFT), nominal"), words.phrase(film.nominal)
    first = handling(product)
    if first is not None:
        yield words("Dry to handle at {}").format(words.condition(first.air)), words.phrase(first.time)
    if heat_stood is not None and heat_stood.continuous_max is not None:
        yield words("Max. continuous service temperature (dry heat)"), words.phrase(heat_stood.continuous_max)
    if product.pot_life is not None:
        yield words("Pot life at {}").format(words.condition(product.pot_life.air)), words.phrase(product.pot_life.time)
    elif product.shelf_life is not None:
        yield words("Shelf life, unopened"), words.phrase(product.shelf_life)
