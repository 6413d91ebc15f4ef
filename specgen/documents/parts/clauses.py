"""What a requirement asks for, as it is printed: the name of each clause and its value."""

from __future__ import annotations

from enum import StrEnum

from specgen.documents.parts.packs import colour_words
from specgen.documents.parts.tested import asked_words
from specgen.documents.parts.wording import Words
from specgen.facts.pairs.families import NOT_NAMED, binder_family
from specgen.facts.requirement import CLAUSE_NAMES, Asked, Clause, Value, types_required
from specgen.model.product import Colour
from specgen.model.system import Layer
from specgen.model.test_required import AskedTest
from specgen.units.quantity import Quantity, Range


def clause_name(clause: Clause, words: Words) -> str:
    """`Volume solids`; a test is named by what it is."""
    return words(CLAUSE_NAMES[clause.asked])


def clause_value(clause: Clause, words: Words) -> str:
    """`at least 60 %`: what is required, as finished text."""
    text = value_in_words(clause.asked, clause.value, words)
    return words("at most {}").format(text) if clause.asked in {Asked.VOC, Asked.THINNER} else text


def value_in_words(asked: Asked, value: Value, words: Words) -> str:
    """A value required or offered, as finished text."""
    match value:
        case Quantity() | Range():
            return words.phrase(value)
        case Colour():
            return colour_words(value)
        case AskedTest():
            return asked_words(value, words)
        case StrEnum():
            return words.word(value)
    return words(binder_family(value)["name"]) if asked is Asked.GENERIC_TYPE else value


def to_be_offered(layer: Layer, words: Words) -> str:
    """`polyurethane or polysiloxane, to be offered`: what stands where a product is named once it is chosen."""
    types = types_in_words(layer, words)
    return words("{types}, to be offered").format(types=types) if types else words("to be offered")


def types_in_words(layer: Layer, words: Words) -> str:
    """`polyurethane or polysiloxane`; empty where no generic type is required."""
    named = [one for one in types_required(layer) if one != NOT_NAMED]
    return words(" or ").join(words(binder_family(one)["name"]) for one in named)


def alternative_named(layer: Layer, id: str, words: Words) -> str:
    """`polyurethane with blocked hardener`: an alternative by its generic type, by its id where it asks for none."""
    stated = layer.required.alternatives if layer.required is not None else ()
    family = next((one.generic_type for one in stated if one.id == id), None)
    return words(binder_family(family)["name"]) if family is not None and family != NOT_NAMED else id
