"""What a product's data say beside its label: air, storage, carriage, waste, health, contents, each in a line.

Called by `cautions` and `label_sheet`. Storage and training follow from `facts.product.hazards` where the law asks for them.
"""

from __future__ import annotations

from collections.abc import Iterator

from specgen.documents.parts.wording import Words
from specgen.facts.product.absorbed import absorbed
from specgen.facts.product.duties import duties_of
from specgen.facts.product.hazard_facts import (
    isocyanates_in,
    monomer_at_limit,
    table_row,
)
from specgen.facts.product.hazards import warmest_storage
from specgen.model.hazards import Hazards, Transport
from specgen.model.product import Product
from specgen.model.spec import Spec
from specgen.standards.tables import Row, table
from specgen.units.quantity import Range, parse_span

Line = tuple[str, str]


def hazard_lines(product: Product, spec: Spec, words: Words) -> Iterator[Line]:
    """(name, finished text) in the order a workshop asks; what is not stated is left out."""
    stated = product.hazards
    if stated is None:
        return
    yield from _when(words("Ventilation"), stated.ventilation)
    yield from _when(words("Contains"), ", ".join(stated.named_on_label))
    yield from _contents(product, stated, words)
    yield from _when(words("Released during cure"), stated.cure_releases)
    noted = absorbed(product)
    if noted is not None:
        said = words("a component is absorbed through the skin ({source})").format(source=words(str(noted)))
        yield words("Skin notation"), said
    if stated.flash_point is not None:
        yield words("Flash point of the liquid"), words.phrase(stated.flash_point)
    yield from _when(words("Health surveillance"), stated.health_surveillance)
    for row in duties_of(product, spec):
        yield words("Legal requirement"), _duty(row, words)
    yield from _when(words("Storage temperature, unopened"), _storage(product, stated, spec, words))
    yield from _when(words("Transport"), _carriage(stated.transport, words))
    yield from _when(words("Waste codes"), "; ".join(_waste(code, words) for code in stated.waste_codes))
    yield from _when(words("Disposal"), stated.disposal)


def kept_and_carried(product: Product, spec: Spec, words: Words) -> str:
    """At what temperature an unopened pack is stored, and as what it is carried, in short; empty where neither is stated."""
    if product.hazards is None:
        return ""
    parts = (_storage(product, product.hazards, spec, words), *_named(product.hazards.transport, words))
    told = ", ".join(part for part in parts if part)
    return words("{}.").format(told) if told else ""


def legally_asked(product: Product, spec: Spec, words: Words) -> Iterator[str]:
    """What the law of the place asks of who works with the product, without its source: training, surveillance, provision."""
    for row in duties_of(product, spec):
        yield _asked(row, words)


def _when(name: str, text: str | None) -> Iterator[Line]:
    if text:
        yield name, text


def _contents(product: Product, stated: Hazards, words: Words) -> Iterator[Line]:
    at_limit = monomer_at_limit(product) if isocyanates_in(product) else None
    if at_limit is not None:
        row = table("isocyanate_duties").row("id", "eu_threshold")
        limit = words.figures(f"{row['figure']} {row['unit']}")
        said = words("{limit} by mass or more") if at_limit else words("less than {limit} by mass")
        yield words("Free monomeric diisocyanates"), said.format(limit=limit)
    if stated.epoxy_up_to_700 is not None:
        held = words("present") if stated.epoxy_up_to_700 else words("not present")
        yield (
            words("Epoxy constituents with an average molecular weight up to {}").format(words.figures(_epoxy_limit())),
            held,
        )


def _epoxy_limit() -> str:
    return table("euh_triggers").row("id", "EUH205")["limit"]


def _duty(row: Row, words: Words) -> str:
    source = words(str(table("isocyanate_duties").row_citation(row)))
    return words("{duty} ({law}, {source})").format(duty=_asked(row, words), law=row["jurisdiction"], source=source)


def _asked(row: Row, words: Words) -> str:
    told = words(row["duty"])
    if not row["figure"]:
        return told
    span = row["unit"] in {"months", "years"}
    limit = f"{row['figure']} {row['unit']}"
    shown = words.phrase(parse_span(limit)) if span else words.figures(limit)
    return words("{duty}: {figure}").format(duty=told, figure=shown)


def _storage(product: Product, stated: Hazards, spec: Spec, words: Words) -> str:
    """The stated range; where only the law gives an upper limit, that too."""
    low, high = stated.storage_min, stated.storage_max
    told = [words.phrase(Range("temperature", low, high))] if low is not None or high is not None else []
    limit = warmest_storage(product, spec) if high is None else None
    if limit is not None:
        told.append(words("{told} ({source})").format(told=words(limit.note), source=words(str(limit.source))))
    return "; ".join(told)


def _carriage(stated: Transport | None, words: Words) -> str:
    if stated is None:
        return ""
    named = (
        *_named(stated, words),
        words("limited quantity, at most {} per inner packaging").format(words.phrase(stated.limited_quantity))
        if stated.limited_quantity is not None
        else "",
        words("at most {} gross per package").format(words.phrase(stated.package_max))
        if stated.package_max is not None
        else "",
    )
    return ", ".join(part for part in named if part)


def _named(stated: Transport | None, words: Words) -> Iterator[str]:
    """As what goods are carried: number and class."""
    if stated is not None and stated.un_number:
        yield stated.un_number
    if stated is not None and stated.transport_class:
        yield words("class {}").format(stated.transport_class)


def _waste(code: str, words: Words) -> str:
    row = table_row("waste_codes", "code", code)
    return f"{waste_code(code)} {words(row['text'])}" if row is not None else waste_code(code)


def waste_code(code: str) -> str:
    """`16 05 04*` in one line."""
    return code.replace(" ", "\N{NO-BREAK SPACE}")
