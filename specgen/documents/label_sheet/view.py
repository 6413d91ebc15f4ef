"""The label elements of one product: what stands on its label, why, in which order, and what is left out.

It shows the declared label beside what follows from the classification; it is no label and classifies nothing. What
follows from the maker's composition is shown as a result alone. The template `label_sheet/document.html.j2` prints it.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace
from datetime import date

from specgen.documents.context import Context
from specgen.documents.parts.annex import WorkingView, annex
from specgen.documents.parts.caution_catalogue import LABEL_FILLS_IN, PICTOGRAMS
from specgen.documents.parts.cautions import HazardView, Statement, data_sheet_line, emergency, hazards, statements
from specgen.documents.parts.packs import pack
from specgen.documents.parts.parties import PartyView, party
from specgen.documents.parts.substances import substance_table
from specgen.documents.parts.tables import Column, TableView, table_view
from specgen.documents.parts.voc import voc_table
from specgen.documents.parts.wording import Words
from specgen.facts.product.declared import in_europe
from specgen.facts.product.hazard_facts import declared_classes, table_row
from specgen.facts.product.hazards import WARMEST, DerivedHazards, hazards_of
from specgen.facts.product.label import Label, LabelCode, Place, label_of_product
from specgen.facts.product.named import asks_for_names
from specgen.facts.product.voc_limits import limit_of
from specgen.model.file_names import sheet_number
from specgen.model.hazards import Hazards
from specgen.model.product import Product
from specgen.standards.citations import Basis, documents
from specgen.standards.tables import table
from specgen.trade.known import NotKnown
from specgen.units.quantity import Quantity

_ROOM = "____________"
"""Left to be filled in."""


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
    contains: str
    order_number: str
    quantity: str
    voc_lines: tuple[str, ...]
    elements: TableView
    precautions: TableView
    left_out: TableView
    facts: tuple[tuple[str, str], ...]
    not_judged: tuple[str, ...]
    substances: TableView
    voc: TableView
    workings: tuple[WorkingView, ...]
    program: str


def label_sheet(product: Product, context: Context) -> LabelSheet:
    """The view of a product."""
    spec, words = context.spec, context.words
    derived, label = hazards_of(spec, product.id, context.day), label_of_product(product, spec, context.day)
    declared = product.hazards if product.hazards is not None else Hazards()
    panels = hazards([product], spec, words)
    workings = derived.aerosol.workings if derived.aerosol is not None else ()
    return LabelSheet(
        number=sheet_number(product),
        title=product.name,
        pack=pack(product, None, words),
        maker=party(spec.project.maker),
        emergency=emergency(spec.project, words),
        on=context.day.isoformat(),
        panel=panels[0] if panels else None,
        on_label=_precautions_in_words(label.printed_precautions, words),
        contains=_contains(product, declared, in_europe=in_europe(spec), words=words),
        order_number=_order_number(product),
        quantity=_quantity(product, words),
        voc_lines=tuple(_voc_lines(product, context.day, words)),
        elements=_elements(label, declared, words),
        precautions=_precautions(label, words),
        left_out=_left_out(label, words),
        facts=tuple(_facts(product, derived, words)),
        not_judged=tuple(dict.fromkeys(_not_judged(reason, words) for reason in derived.reasons())),
        substances=substance_table(product, spec.project.jurisdictions, context.day, words),
        voc=voc_table([product], context.day, words),
        workings=annex(workings, context.spec, words),
        program=context.program,
    )


def _precautions_in_words(codes: Sequence[str], words: Words) -> tuple[Statement, ...]:
    """In their official wording; what it leaves open is completed on the label, for a label has no sections to point to."""
    return tuple(
        replace(one, note=words(LABEL_FILLS_IN) if one.note else "") for one in statements("p_statements", codes, words)
    )


def _contains(product: Product, declared: Hazards, *, in_europe: bool, words: Words) -> str:
    """The substances named; that none is, where a class asks for one. Source: CLP Article 18(3)(b)."""
    if declared.named_on_label:
        return ", ".join(declared.named_on_label)
    return words("not stated") if in_europe and asks_for_names(product) else ""


def _order_number(product: Product) -> str:
    """That of the one variant there is; else room for the one that is packed."""
    numbers = {variant.order_number for variant in product.variants}
    return numbers.pop() or _ROOM if len(numbers) == 1 else _ROOM


def _quantity(product: Product, words: Words) -> str:
    """Each fill there is, volume first and mass where that alone is stated."""
    fills = dict.fromkeys(words.phrase(variant.fill or product.pack.fill) for variant in product.variants)
    return ", ".join(fill for fill in fills if fill) or words.phrase(product.pack.net_mass) or _ROOM


def _voc_lines(product: Product, on: date, words: Words) -> Iterator[str]:
    """What a label says of VOC. Source: Directive 2004/42/EC, article 4: subcategory, its limit, and the most there is, in g/L."""
    voc = product.voc
    for entry in voc.categories if voc is not None and voc.content is not None else ():
        limit = limit_of(product, entry, on)
        if limit is None or isinstance(limit, NotKnown) or not isinstance(limit.limit, Quantity):
            continue
        yield words(
            "{law} limit value for this product (category {category}): {limit}. Contains at most {content} VOC."
        ).format(
            law=entry.jurisdiction,
            category=entry.category,
            limit=words.phrase(limit.limit),
            content=words.phrase(voc.content if voc is not None else None),
        )


def _elements(label: Label, declared: Hazards, words: Words) -> TableView:
    """Signal word, pictograms, H and EUH statements: declared, or asked for by a class and missing."""
    rows: list[tuple[LabelCode, str, str]] = []
    if label.signal_word is not None and declared.signal_word is not None:
        rows.append((label.signal_word, words("Signal word"), words.word(declared.signal_word)))
    for entry in label.pictograms:
        name = words(PICTOGRAMS[entry.code]) if entry.code in PICTOGRAMS else ""
        rows.append((entry, _shown(entry, words), name))
    for name, entries, named in (
        ("h_statements", label.statements, ()),
        ("euh_statements", label.supplemental, declared.sensitisers_named),
    ):
        texts = statements(name, [entry.code for entry in entries], words, named)
        rows += [(e, _shown(e, words), s.text) for e, s in zip(entries, texts, strict=True)]
    document = _one_document([entry for entry, *_ in rows])
    source = words("Source: {document}").format(document=document) if document else words("Source")
    columns = (
        Column(words("Element"), "w-12"),
        Column(words("Wording or symbol"), "w-30"),
        Column(words("Derived from"), "w-40"),
        Column(source),
    )
    shown = [(*told, *_ground(entry, words, named_above=bool(document))) for entry, *told in rows]
    return table_view(words("Signal word, pictograms and hazard statements"), columns, shown)


def _one_document(entries: Sequence[LabelCode]) -> str:
    """The name of the document of which every source is a part; empty where they differ."""
    sources = [entry.ground.source for entry in entries if entry.ground is not None]
    named = {source.document for source in sources}
    if len(named) != 1 or not all(source.document and source.clause for source in sources):
        return ""
    return documents()[named.pop()].title


def _precautions(label: Label, words: Words) -> TableView:
    """Every precaution in the order of its rank, with its place; how many a label carries stands once, in the caption."""
    places = {
        Place.LABEL: words("yes"),
        Place.REDUNDANT: words("no: {}"),
        Place.BEYOND: words("no: {}"),
        Place.NOT_ASKED_FOR: words("no: not required by any declared class"),
        Place.NOT_DECLARED: words("no: not declared"),
    }
    texts = statements("p_statements", [entry.code for entry in label.precautions], words)
    rows = [
        (
            entry.code if entry.declared else f"{entry.code}*",
            wording.text,
            places[entry.place].format(words(entry.note)) if entry.place is not None else "",
            *_ground(entry, words)[:1],
        )
        for entry, wording in zip(label.precautions, texts, strict=True)
    ]
    columns = (
        Column(words("Code"), "w-10"),
        Column(words("Wording"), "w-40"),
        Column(words("On the label"), "w-15"),
        Column(words("Required by")),
    )
    most = table("precaution_rules").row("id", "most")["value"]
    caption = words(
        "Precautionary statements by rank; a label carries {most} as a rule (*: not declared; …: to be completed)"
    ).format(most=most)
    return table_view(caption, columns, rows)


def _left_out(label: Label, words: Words) -> TableView:
    columns = (
        Column(words("Omitted"), "w-15"),
        Column(words("Reason"), "w-30"),
        Column(words("Would be derived from"), "w-30"),
        Column(words("Source")),
    )
    rows = [
        (gone.code, words(gone.note), *_ground(LabelCode(gone.code, False, gone), words)) for gone in label.left_out
    ]
    return table_view(words("Omitted from the label"), columns, rows)


def _facts(product: Product, derived: DerivedHazards, words: Words) -> Iterator[tuple[str, str]]:
    declared = product.hazards if product.hazards is not None else Hazards()
    if sheet := data_sheet_line(declared, words):
        yield words("Safety data sheet"), sheet
    aerosol = derived.aerosol
    if aerosol is not None and not isinstance(aerosol, NotKnown):
        text = words("category {category}: {why} ({source})")
        yield (
            words("Aerosol category, from the composition"),
            text.format(category=aerosol.category, why=words(aerosol.why), source=words(str(aerosol.source))),
        )
    classes = [
        words("{hazard_class} ({basis})").format(hazard_class=words(str(stated)), basis=entry.basis)
        if entry.basis
        else words(str(stated))
        for entry, stated in zip(declared.classification, declared_classes(product), strict=True)
    ]
    if classes:
        yield words("Declared hazard classes"), "; ".join(classes)
    test = declared.aerosol_test
    if test is not None:
        measured = (words.phrase(test.ignition_distance), test.time_equivalent, test.deflagration_density)
        shown = [str(value) for value in measured if value not in {"", None}]
        yield words("Flammability test"), "; ".join([test.report, *shown])
    for element in derived.storage:
        yield (
            words("Storage temperature") if element.code == WARMEST else words("Amount stored"),
            words("{told} ({source})").format(told=words(element.note), source=words(str(element.source))),
        )
    if derived.carriage is not None:
        yield (
            words("Transport"),
            words("dangerous goods class {code} ({source})").format(
                code=derived.carriage.code, source=words(str(derived.carriage.source))
            ),
        )
    if derived.training is not None and not isinstance(derived.training, NotKnown):
        text = words("{sentence} (shown separately from the other label information; {source})")
        yield (
            words("Training statement (not part of the label elements)"),
            text.format(sentence=derived.training.note, source=words(str(derived.training.source))),
        )
    why = "" if isinstance(derived.precautions, NotKnown) else words(derived.precautions.more_than_six)
    reasons = [text for text in (declared.precautions_reason, why) if text]
    if reasons:
        yield (
            words("Reason for the precautionary statements declared"),
            "; ".join(text.rstrip(".") for text in reasons) + ".",
        )
    if declared.titanium_dioxide_decision is not None:
        yield words("Titanium dioxide, EUH211"), declared.titanium_dioxide_decision


def _not_judged(reason: NotKnown, words: Words) -> str:
    """What cannot be told; of a statement the law took back, why and on whose word, for that names nothing of the maker's."""
    row = table_row("euh_triggers", "id", reason.what)
    if row is not None and row["basis"] == Basis.SECONDARY.name.lower():
        told = words("{}: not asked for: {} ({})")
        return told.format(reason.what, words(row["note"]), words(str(table("euh_triggers").row_citation(row))))
    return words("{}: cannot be assessed from the data stated").format(reason.what)


def _shown(entry: LabelCode, words: Words) -> str:
    return entry.code if entry.declared else words("{} (not declared)").format(entry.code)


def _ground(entry: LabelCode, words: Words, *, named_above: bool = False) -> tuple[str, str]:
    """The classes it follows from, and on whose word; `named_above` where the document stands above them all."""
    if entry.ground is None:
        return words("declared; not required by any declared class"), "–"
    reasons = "; ".join(words(reason) for reason in entry.ground.reasons)
    source = entry.ground.source
    return words("composition held by the manufacturer") if entry.held_by_maker else reasons, words(
        source.place if named_above else str(source)
    )
