"""What a requirement asks for, as it is printed: the name of each clause and its value."""

from __future__ import annotations

from collections.abc import Mapping
from enum import StrEnum

from specgen.documents.parts.packs import colour_words
from specgen.documents.parts.wording import Words
from specgen.facts.pairs.families import NOT_NAMED, binder_family
from specgen.facts.requirement import Asked, Clause, types_required
from specgen.model.product import Colour
from specgen.model.requirement import RequiredTest
from specgen.model.system import Layer
from specgen.units.locale import N_
from specgen.units.quantity import Quantity, Range

_NAMES: Mapping[Asked, str] = {
    Asked.ROLE: N_("Coat type"),
    Asked.GENERIC_TYPE: N_("Generic type"),
    Asked.SOLIDS: N_("Volume solids"),
    Asked.VOC: N_("VOC content, ready for use"),
    Asked.COLOUR: N_("Colour"),
    Asked.GLOSS: N_("Gloss (at 60°)"),
    Asked.CURING: N_("Curing"),
    Asked.PACK: N_("Pack"),
    Asked.FILM: N_("DFT in this coat"),
    Asked.METHOD: N_("Application"),
    Asked.THINNER: N_("Thinner, by volume of the paint"),
    Asked.TEST: N_("Test"),
    Asked.TEXT: N_("Further requirement"),
}


def clause_name(clause: Clause, words: Words) -> str:
    """`Volume solids`; a test is named by what it is."""
    return words(_NAMES[clause.asked])


def clause_value(clause: Clause, words: Words) -> str:
    """`at least 60 %`: what is required, as finished text."""
    value = clause.value
    match value:
        case Quantity() if clause.asked in {Asked.VOC, Asked.THINNER}:
            return words("at most {}").format(words.phrase(value))
        case Quantity() | Range():
            return words.phrase(value)
        case Colour():
            return colour_words(value)
        case RequiredTest():
            return f"{value.test}: {value.limit}" if value.limit else value.test
        case StrEnum():
            return words.word(value)
    return words(binder_family(value)["name"]) if clause.asked is Asked.GENERIC_TYPE else value


def to_be_offered(layer: Layer, words: Words) -> str:
    """`polyurethane or polysiloxane, to be offered`: what stands where a product is named once it is chosen."""
    types = types_in_words(layer, words)
    return words("{types}, to be offered").format(types=types) if types else words("to be offered")


def types_in_words(layer: Layer, words: Words) -> str:
    """`polyurethane or polysiloxane`; empty where no generic type is required."""
    named = [one for one in types_required(layer) if one != NOT_NAMED]
    return words(" or ").join(words(binder_family(one)["name"]) for one in named)
