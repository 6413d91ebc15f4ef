"""An address of the sources as a page tells it, by titles and numbers: `minimum DFT of the coat 2 topcoat of the system Primer and finish`.

A reader of pages has no sources, so that an id says nothing. Called by every page that names a place of them.
"""

from __future__ import annotations

import re
from collections.abc import Iterator

from specgen.comparison.address_words import address_in_words
from specgen.documents.parts.coats import coat_name, numbered
from specgen.documents.parts.tested import quantity_of
from specgen.documents.parts.wording import Words
from specgen.model.audience import customer_path
from specgen.model.job import Job
from specgen.model.node import Node
from specgen.model.offer import Offer, OfferedCoat
from specgen.model.product import Product
from specgen.model.spec import LIST_KINDS, Spec
from specgen.model.system import Layer, System
from specgen.model.test_report import DoneTest
from specgen.model.test_required import AskedTest

_NAMES = ("number", "title", "name", "check", "what")


def place_in_words(address: str, spec: Spec, words: Words) -> str:
    """The leaf, and the entries it stands in, the innermost first; what is the manufacturer's alone only as such."""
    path = tuple(customer_path(address).split("."))
    names = dict(_names(path, spec, words))
    return address_in_words(".".join(path), words.translate, names)


def coats_in_words(text: str, system: System, words: Words) -> str:
    """The sentence of a finding, with the system and its coats by what a page calls them."""
    names = {layer.id: coat_name(number, layer, words) for number, layer in numbered(system)}
    ids = "|".join(re.escape(id) for id in sorted(names, key=len, reverse=True))
    if ids:
        text = re.sub(
            rf"\bbetween ({ids}) and ({ids})(?![\w-])", lambda met: f"between {names[met[1]]} and {names[met[2]]}", text
        )
        text = re.sub(rf"\bthe (coat|layer) ({ids})(?![\w-])", lambda met: f"the coat {names[met[2]]}", text)
    return text.replace(f"the system {system.id}", words("the system “{}”").format(system.title))


def products_in_words(text: str, spec: Spec) -> str:
    """The sentence of a finding with products by their names; an id without a figure may be a word of the sentence and is left."""
    ids = [id for id in spec.products if any(sign.isdigit() for sign in id)]
    if not ids:
        return text
    either = "|".join(re.escape(id) for id in sorted(ids, key=len, reverse=True))
    return re.sub(rf"(?<![\w-])(?:{either})(?![\w-])", lambda met: spec.products[met[0]].name, text)


def _names(path: tuple[str, ...], spec: Spec, words: Words) -> Iterator[tuple[tuple[str, ...], str]]:
    """The name of each entry on the way, by the steps that lead to it."""
    if path[0] not in LIST_KINDS or len(path) < 2:
        return
    record: Node | None = getattr(spec, path[0]).get(path[1])
    above: Node | None = None
    at = 2
    while record is not None:
        yield path[:at], _name(record, above, spec, words)
        above, record = record, None
        # over the parts that have no id to the next entry of a list
        held: object = above
        for step in path[at:]:
            at += 1
            if isinstance(held, tuple):
                record = next((one for one in held if getattr(one, "id", None) == step), None)
                break
            held = getattr(held, step, None)


def _name(record: Node, above: Node | None, spec: Spec, words: Words) -> str:
    if isinstance(record, Layer) and isinstance(above, System):
        return next(coat_name(number, one, words) for number, one in numbered(above) if one.id == record.id)
    if isinstance(record, Product):
        return record.name
    if isinstance(record, Job | Offer):
        return record.document.number
    if isinstance(record, OfferedCoat) and record.product in spec.products:
        return spec.products[record.product].name
    if isinstance(record, AskedTest | DoneTest):
        return _test_name(record, words)
    named = (getattr(record, name, None) for name in _NAMES)
    return next((name for name in named if isinstance(name, str)), getattr(record, "id", ""))


def _test_name(test: AskedTest | DoneTest, words: Words) -> str:
    """`gloss retained to ISO 2813`; the words of a test that names no method."""
    if test.method is None:
        return str(getattr(test, "test", None) or getattr(test, "id", ""))
    quantity = quantity_of(test.method, words)
    if test.standard is None:
        return quantity
    return words("{quantity} to {standard}").format(quantity=quantity, standard=test.standard)
