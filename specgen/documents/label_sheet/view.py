"""The label elements of one product: what stands on its label, why, in which order, and what is left out.

It shows the declared label beside what follows from the classification; it is no label and classifies nothing. What
follows from the maker's composition is shown as a result alone. The template `label_sheet/document.html.j2` prints it.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from specgen.documents.context import Context
from specgen.documents.parts.annex import WorkingView, annex
from specgen.documents.parts.caution_catalogue import PICTOGRAMS
from specgen.documents.parts.cautions import HazardView, Statement, data_sheet_line, emergency, hazards, statements
from specgen.documents.parts.packs import pack
from specgen.documents.parts.parties import PartyView, party
from specgen.documents.parts.tables import Column, TableView, table_view
from specgen.documents.parts.voc import voc_table
from specgen.documents.parts.wording import Words
from specgen.facts.product.hazard_facts import for_the_public
from specgen.facts.product.hazards import DerivedHazards, hazards_of
from specgen.facts.product.label import on_label
from specgen.model.file_names import sheet_number
from specgen.model.hazards import Hazards
from specgen.model.product import Product
from specgen.trade.hazard_class import Classification, Element
from specgen.trade.judged import Classified
from specgen.trade.labelling import LabelElements
from specgen.trade.precautions import Precautions

# Supplemental statements whose ground names no substance of the composition.
_PLAIN_GROUNDS = frozenset({"EUH066", "EUH204", "EUH205"})


@dataclass(frozen=True, slots=True, kw_only=True)
class LabelSheet:
    """The whole document. `panel` is what the safety data sheet declares, None where it declares nothing."""

    number: str
    title: str
    pack: str
    maker: PartyView
    emergency: str
    on: str
    panel: HazardView | None
    on_label: tuple[Statement, ...]
    elements: TableView
    precautions: TableView
    left_out: TableView
    facts: tuple[tuple[str, str], ...]
    not_judged: tuple[str, ...]
    voc: TableView
    workings: tuple[WorkingView, ...]
    program: str


def label_sheet(product: Product, context: Context) -> LabelSheet:
    """The view of a product."""
    spec, words = context.spec, context.words
    derived = hazards_of(spec, product.id, public=for_the_public(product, spec.project))
    declared = product.hazards if product.hazards is not None else Hazards()
    panels = hazards([product], spec.project, words)
    workings = derived.aerosol.workings if derived.aerosol is not None else ()
    return LabelSheet(
        number=sheet_number(product),
        title=product.name,
        pack=pack(product, None, words),
        maker=party(spec.project.maker),
        emergency=emergency(spec.project, words),
        on=context.day.isoformat(),
        panel=panels[0] if panels else None,
        on_label=tuple(statements("p_statements", on_label(declared, derived), words)),
        elements=_elements(declared, derived, words),
        precautions=_precautions(declared, derived, words),
        left_out=_left_out(derived, words),
        facts=tuple(_facts(declared, derived, words)),
        not_judged=tuple(
            dict.fromkeys(words("{}: cannot be judged from what is stated").format(r.what) for r in derived.reasons())
        ),
        voc=voc_table([product], context.day, words),
        workings=annex(workings, words),
        program=context.program,
    )


def _elements(declared: Hazards, derived: DerivedHazards, words: Words) -> TableView:
    """Signal word, pictograms, H and EUH statements: declared, or asked for by a class and missing."""
    label = derived.label if isinstance(derived.label, LabelElements) else None
    signal = words.word(declared.signal_word) if declared.signal_word is not None else ""
    follows = _by_code(label.pictograms + label.statements) if label is not None else {}
    follows |= _by_code([entry for entry in derived.supplemental if isinstance(entry, Element)])
    word = (words("Signal word"), signal, *_ground(label.signal_word if label is not None else None, words))
    rows = [word] if signal else []
    for code in sorted({*declared.pictograms, *_codes(label.pictograms if label is not None else ())}):
        name = words(PICTOGRAMS[code]) if code in PICTOGRAMS else ""
        rows.append((_shown(code, declared.pictograms, words), name, *_ground(follows.get(code), words)))
    derived_codes = _codes(label.statements if label is not None else ())
    for entry in statements("h_statements", _joined(declared.statements, derived_codes), words):
        shown = _shown(entry.code, declared.statements, words)
        rows.append((shown, entry.text, *_ground(follows.get(entry.code), words)))
    more = _codes([entry for entry in derived.supplemental if isinstance(entry, Element)])
    named = declared.sensitisers_named
    for entry in statements("euh_statements", _joined(declared.supplemental, more), words, named):
        shown = _shown(entry.code, declared.supplemental, words)
        rows.append((shown, entry.text, *_ground(follows.get(entry.code), words)))
    columns = (
        Column(words("Element"), "w-15"),
        Column(words("Wording, or what it shows"), "w-30"),
        Column(words("Follows from"), "w-30"),
        Column(words("Source")),
    )
    return table_view(words("Signal word, pictograms, hazard statements"), columns, rows)


def _precautions(declared: Hazards, derived: DerivedHazards, words: Words) -> TableView:
    """Every precaution in the order of its rank, with its place."""
    found = derived.precautions if isinstance(derived.precautions, Precautions) else None
    ranked = [*found.on_label, *found.beyond] if found is not None else []
    beyond = _by_code(found.beyond) if found is not None else {}
    redundant = _by_code(found.redundant) if found is not None else {}
    grounds = _by_code(ranked)
    shown = on_label(declared, derived)
    rows = []
    for entry in statements("p_statements", _joined(_codes(ranked), declared.precautions), words):
        element = grounds.get(entry.code)
        if entry.code in shown:
            place = words("on the label")
        elif entry.code in redundant:
            place = words("not on the label: {}").format(redundant[entry.code].note)
        elif entry.code in beyond:
            place = words("not on the label: {}").format(beyond[entry.code].note)
        elif element is None:
            place = words("asked for by no class stated here")
        elif entry.code in declared.precautions:
            place = words("not on the label: no room is left")
        else:
            place = words("ranks high enough for the label")
        text = f"{entry.text} {entry.note}".strip()
        rows.append((_shown(entry.code, declared.precautions, words), text, place, *_ground(element, words)[:1]))
    columns = (
        Column(words("Precaution"), "w-15"),
        Column(words("Wording"), "w-35"),
        Column(words("Place"), "w-20"),
        Column(words("Asked for by")),
    )
    return table_view(words("Precautions, those of the label first"), columns, rows)


def _left_out(derived: DerivedHazards, words: Words) -> TableView:
    gone: list[Element] = []
    if isinstance(derived.label, LabelElements):
        gone += [*derived.label.left_out, *derived.label.optional]
    if isinstance(derived.precautions, Precautions):
        gone += derived.precautions.redundant
    columns = (
        Column(words("Left out"), "w-15"),
        Column(words("Why"), "w-30"),
        Column(words("Would follow from"), "w-30"),
        Column(words("Source")),
    )
    rows = [(entry.code, words(entry.note), *_ground(entry, words)) for entry in gone]
    return table_view(words("Left out of the label"), columns, rows)


def _facts(declared: Hazards, derived: DerivedHazards, words: Words) -> Iterator[tuple[str, str]]:
    if sheet := data_sheet_line(declared, words):
        yield words("Safety data sheet"), sheet
    found = derived.aerosol
    if isinstance(found, Classified):
        said = words("category {category}: {why} ({source})")
        yield (
            words("Aerosol, by its contents"),
            said.format(category=found.category, why=words(found.why), source=words(str(found.source))),
        )
    for entry in declared.classification:
        named = words(str(Classification(entry.hazard_class, entry.category, entry.statement or "")))
        yield words("Declared class"), f"{named}; {entry.basis}" if entry.basis else named
    test = declared.aerosol_test
    if test is not None:
        measured = (words.phrase(test.ignition_distance), test.time_equivalent, test.deflagration_density)
        shown = [str(value) for value in measured if value not in {"", None}]
        yield words("Flammability test"), "; ".join([test.report, *shown])
    for element in derived.storage:
        yield (
            words("Storage"),
            words("{told} ({source})").format(told=words(element.note), source=words(str(element.source))),
        )
    if derived.carriage is not None:
        yield (
            words("Carriage"),
            words("class of dangerous goods {code} ({source})").format(
                code=derived.carriage.code, source=words(str(derived.carriage.source))
            ),
        )
    if derived.training is not None and isinstance(derived.training, Element):
        said = words("{sentence} (stands apart from the rest; {source})")
        yield (
            words("Beside the label"),
            said.format(sentence=derived.training.note, source=words(str(derived.training.source))),
        )
    why = words(derived.precautions.more_than_six) if isinstance(derived.precautions, Precautions) else ""
    reasons = [text for text in (declared.precautions_reason, why) if text]
    if reasons:
        yield words("Reason for these precautions"), "; ".join(reasons)
    if declared.titanium_dioxide_decision is not None:
        yield words("Titanium dioxide, EUH211"), declared.titanium_dioxide_decision


def _by_code(entries: Sequence[Element]) -> dict[str, Element]:
    return {entry.code: entry for entry in entries}


def _codes(entries: Sequence[Element]) -> tuple[str, ...]:
    return tuple(entry.code for entry in entries)


def _joined(first: Sequence[str], then: Sequence[str]) -> tuple[str, ...]:
    return tuple(dict.fromkeys((*first, *then)))


def _shown(code: str, declared: Sequence[str], words: Words) -> str:
    return code if code in declared else words("{} (not declared)").format(code)


def _ground(element: Element | None, words: Words) -> tuple[str, str]:
    """The classes it follows from, and on whose word; a ground that names a substance is the maker's."""
    if element is None:
        return words("declared; no class stated here asks for it"), ""
    plain = not element.code.startswith("EUH") or element.code in _PLAIN_GROUNDS
    reasons = "; ".join(words(reason) for reason in element.reasons) if plain else words("contents held by the maker")
    return reasons, words(str(element.source))
