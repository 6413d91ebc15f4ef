"""The label of a product code by code: declared, or asked for by its classes, on what ground, and which precautions have room.

Nothing declared is changed, and what follows is that of `hazards_of`. Called by the label sheet.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from datetime import date
from enum import Enum, auto

from specgen.facts.product.hazards import hazards_of
from specgen.model.hazards import Hazards
from specgen.model.product import Product
from specgen.model.spec import Spec
from specgen.standards.tables import table
from specgen.trade.hazard_class import Element
from specgen.trade.labelling import LabelElements
from specgen.trade.precautions import Precautions
from specgen.units.locale import N_

# Supplemental statements whose ground names no substance of the composition and none of its shares.
_OPEN_GROUNDS = frozenset({"EUH066", "EUH204", "EUH205"})

# Gloves and eye protection stay on the label where they are declared, whatever the rank (common practice, no source).
_GEAR = "P280"


class Place(Enum):
    """Where a precaution goes: on the label, or why not. REDUNDANT and BEYOND carry their reason as a note."""

    LABEL = auto()
    REDUNDANT = auto()
    BEYOND = auto()
    NOT_ASKED_FOR = auto()
    NOT_DECLARED = auto()


@dataclass(frozen=True, slots=True)
class LabelCode:
    """One code, whether the sheet declares it, and what it follows from; `ground` is None where no class asks for it.

    `place` is that of a precaution, `note` the reason of its place.
    """

    code: str
    declared: bool
    ground: Element | None
    place: Place | None = None
    note: str = ""

    @property
    def held_by_maker(self) -> bool:
        """True where the ground names a substance or a share of the composition: then a reader sees that there is one."""
        return self.code.startswith("EUH") and self.code not in _OPEN_GROUNDS


@dataclass(frozen=True, slots=True)
class Label:
    """The codes of a label in their order: pictograms by number, statements as declared and then as they follow,
    precautions by rank. `left_out` gives way to something else or may be left out, each with its note."""

    signal_word: LabelCode | None
    pictograms: tuple[LabelCode, ...]
    statements: tuple[LabelCode, ...]
    supplemental: tuple[LabelCode, ...]
    precautions: tuple[LabelCode, ...]
    left_out: tuple[Element, ...]

    @property
    def printed_precautions(self) -> tuple[str, ...]:
        """The declared precautions the label has room for, by rank; all of them where that cannot be judged."""
        return tuple(entry.code for entry in self.precautions if entry.place is Place.LABEL)


def label_of_product(product: Product, spec: Spec, on: date) -> Label:
    """The label as far as classes are stated. Source: CLP Annex I parts 2 to 4 and Annex II; each ground carries its own."""
    declared = product.hazards if product.hazards is not None else Hazards()
    derived = hazards_of(spec, product.id, on)
    elements = derived.label if isinstance(derived.label, LabelElements) else None
    wanted = derived.precautions if isinstance(derived.precautions, Precautions) else None
    word = declared.signal_word
    pictograms = _codes(declared.pictograms, elements.pictograms if elements is not None else ())
    return Label(
        LabelCode(word, True, elements.signal_word if elements is not None else None) if word is not None else None,
        tuple(sorted(pictograms, key=lambda entry: entry.code)),
        tuple(_codes(declared.statements, elements.statements if elements is not None else ())),
        tuple(_codes(declared.supplemental, [e for e in derived.supplemental if isinstance(e, Element)])),
        tuple(_precautions(declared, wanted)),
        (
            *((*elements.left_out, *elements.optional) if elements is not None else ()),
            *(wanted.redundant if wanted is not None else ()),
        ),
    )


def _codes(declared: Sequence[str], follows: Sequence[Element]) -> Iterator[LabelCode]:
    grounds = {element.code: element for element in follows}
    for code in dict.fromkeys((*declared, *grounds)):
        yield LabelCode(code, code in declared, grounds.get(code))


def _precautions(declared: Hazards, wanted: Precautions | None) -> Iterator[LabelCode]:
    grounds = {element.code: element for element in ((*wanted.on_label, *wanted.beyond) if wanted is not None else ())}
    beyond = {element.code: element.note for element in (wanted.beyond if wanted is not None else ())}
    redundant = {element.code: element.note for element in (wanted.redundant if wanted is not None else ())}
    printed = _with_room(declared, wanted)
    for code in dict.fromkeys((*grounds, *declared.precautions)):
        ground, note = grounds.get(code), ""
        if code in printed:
            place = Place.LABEL
        elif code in redundant:
            place, note = Place.REDUNDANT, redundant[code]
        elif code in beyond:
            place, note = Place.BEYOND, beyond[code]
        elif code in declared.precautions and ground is not None and _GEAR in printed:
            place, note = Place.BEYOND, N_("gives way to P280 (common practice, no source)")
        else:
            place = Place.NOT_ASKED_FOR if ground is None else Place.NOT_DECLARED
        yield LabelCode(code, code in declared.precautions, ground, place, note)


def _with_room(declared: Hazards, wanted: Precautions | None) -> tuple[str, ...]:
    """At most as many as the table of rules for precautions says, more only where the law asks for more."""
    if wanted is None:
        return declared.precautions
    ranked = [entry.code for entry in (*wanted.on_label, *wanted.beyond) if entry.code in declared.precautions]
    most = max(int(table("precaution_rules").row("id", "most")["value"]), len(wanted.required))
    listed = tuple(dict.fromkeys((*ranked, *declared.precautions)))
    if _GEAR not in listed[most:]:
        return listed[:most]
    kept = list(listed[:most])
    gives_way = next((code for code in reversed(kept) if code not in wanted.required), None)
    if gives_way is not None:
        kept.remove(gives_way)
    return (*kept, _GEAR)
