"""What the products of a job do to people, said once for all of them: what all have stands once, what some have names them.

Called by `safety`. Nothing that a product states is left out: what was a panel a product is a row a statement here.
"""

from __future__ import annotations

from collections.abc import Hashable, Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass
from typing import TypeVar

from specgen.documents.parts.caution_catalogue import NO_FIRST_AID, NOT_STATED, SHEET_FIRST, THINNER
from specgen.documents.parts.cautions import (
    HazardView,
    Statement,
    acts,
    chemical_hazards,
    data_sheet_words,
    gravest_of,
    hazards,
    if_swallowed,
)
from specgen.documents.parts.pictogram import PictogramView
from specgen.documents.parts.protection import body_unstated
from specgen.documents.parts.short_names import apart, short_names
from specgen.documents.parts.step_cautions import standing_by_product
from specgen.documents.parts.tables import Column, TableView, table_view
from specgen.documents.parts.wording import Words
from specgen.documents.parts.work_wear import WorkWear, work_wear
from specgen.facts.job.confined import place_of
from specgen.facts.job.thinners import without_hazards
from specgen.facts.product.protection import USUAL, usual_needs, worn, worn_at
from specgen.model.hazards import Route, Task
from specgen.model.job import Job
from specgen.model.product import PackForm, Product
from specgen.model.spec import Spec

T = TypeVar("T", bound=Hashable)


@dataclass(frozen=True, slots=True, kw_only=True)
class MergedSafety:
    """`word` and `pictograms` are the gravest word and all symbols; `products` says which product has which."""

    word: str
    level: str
    pictograms: tuple[PictogramView, ...]
    products: TableView
    statements: TableView
    protection: TableView
    first_aid: TableView
    rules: TableView


def merged_safety(products: Sequence[Product], job: Job, spec: Spec, words: Words) -> MergedSafety | None:
    """The hazards of the products and of thinners and cleaners, the gravest word first; None where none is named."""
    alone = (
        *(panel for product in products for panel in hazards([product], spec, words)),
        *chemical_hazards(job, words),
    )
    if not alone:
        return None
    gravest = gravest_of(alone)
    named = _Named([panel.product for panel in alone], words)
    silent = [(name or words(THINNER), data_sheet_words(sheet, words)) for name, sheet in without_hazards(job, spec)]
    cleaners = [*(panel.product for panel in chemical_hazards(job, words)), *(name for name, _ in silent)]
    own = _Named([product.name for product in products], words, alone=not cleaners)
    return MergedSafety(
        word=gravest.signal_word,
        level=gravest.level,
        pictograms=tuple({symbol.code: symbol for panel in alone for symbol in panel.pictograms}.values()),
        products=_products(alone, silent, named, words),
        statements=_statements(alone, named, words),
        protection=_protection(products, work_wear(job, spec, words), own, words),
        first_aid=_first_aid(products, cleaners, own, job, words),
        rules=_rules(products, alone, job, named, words),
    )


class _Named:
    """Which of several a row is for: `all`, or their short names where others stand beside them and they are not `alone`."""

    def __init__(self, names: Sequence[str], words: Words, *, alone: bool = True) -> None:
        self.short: Mapping[str, str] = short_names(names)
        self._words, self._alone = words, alone

    def __call__(self, owners: Iterable[str]) -> str:
        held, words = set(owners), self._words
        if held == set(self.short) and self._alone:
            return words("all") if len(held) > 1 else ""
        return apart([short for name, short in self.short.items() if name in held])


def _merged(said: Iterable[tuple[str, T]]) -> dict[T, tuple[str, ...]]:
    """Whose each of (owner, what) is, in the order it comes first."""
    found: dict[T, dict[str, None]] = {}
    for owner, what in said:
        found.setdefault(what, {})[owner] = None
    return {what: tuple(owners) for what, owners in found.items()}


def _products(alone: Sequence[HazardView], silent: Sequence[tuple[str, str]], named: _Named, words: Words) -> TableView:
    """What is opened, with its signal word and sheet; a thinner or cleaner of which nobody states the hazards says so."""
    columns = (
        Column(words("Short name"), "w-10"),
        Column(words("Product")),
        Column(words("Signal word, pictograms"), "w-20"),
        Column(words("Safety data sheet"), "w-50"),
    )
    rows = [
        (
            named.short[panel.product],
            panel.product,
            ", ".join((panel.signal_word, *(symbol.code for symbol in panel.pictograms))),
            "\n".join(panel.data_sheets) or words("not stated"),
        )
        for panel in alone
    ]
    for name, sheet in silent:
        said = words(SHEET_FIRST)
        rows.append((name, name, words("not stated"), f"{sheet}: {said}" if sheet else said))
    if all(short == name for short, name, _, _ in rows):
        rows = [("", name, signal, sheet) for _, name, signal, sheet in rows]
    return table_view(words("Products and their safety data sheets"), columns, rows)


def _statements(alone: Sequence[HazardView], named: _Named, words: Words) -> TableView:
    """A row for each set of products; the statements all have come first."""
    said = _merged((panel.product, _printed(entry, words)) for panel in alone for entry in panel.statements)
    kept = _merged((panel.product, _printed(entry, words)) for panel in alone for entry in panel.precautions)
    order = list(named.short)
    sets = sorted(
        {*said.values(), *kept.values()}, key=lambda owners: (-len(owners), [order.index(name) for name in owners])
    )
    # who states no precaution at all states none, which is no word that there is none
    silent = {panel.product for panel in alone if not panel.precautions}
    rows = [
        (
            named(owners),
            _run_in(text for text, whose in said.items() if whose == owners) or "–",
            _run_in(text for text, whose in kept.items() if whose == owners)
            or (words("not stated") if silent.issuperset(owners) else "–"),
        )
        for owners in sets
    ]
    columns = (
        Column(words("Products"), "w-12"),
        Column(words("Hazard statements"), "w-35"),
        Column(words("Precautionary statements")),
    )
    return table_view(words("Statements of the label, in their official wording"), columns, rows)


def _run_in(texts: Iterable[str]) -> str:
    """Statements as sentences one after the other, each in its own words."""
    return " ".join(text if text.endswith((".", "!", ")")) else f"{text}." for text in texts)


def _printed(entry: Statement, words: Words) -> str:
    unconfirmed = words("(not verified against the published text)") if entry.unconfirmed else ""
    return " ".join(part for part in (entry.code, entry.text, unconfirmed, entry.note) if part)


def _protection(products: Sequence[Product], work: Sequence[WorkWear], named: _Named, words: Words) -> TableView:
    """A row a task; where products differ the cell says for which each holds, and what the work itself asks for stands with them."""
    ours = {one.task for one in work}
    tasks = [
        task
        for task in Task
        if task in {*USUAL, *ours} or any(entry.task is task for p in products for entry in worn(p))
    ]
    if products and all(any(entry.task is Task.ANY for entry in worn(product)) for product in products):
        tasks = [
            task for task in tasks if task in ours or any(entry.task is task for p in products for entry in worn(p))
        ]
    rows = []
    for task in tasks:
        kits = [(product.name, _kit(product, task, words)) for product in products if _has(product, task)]
        worn_by = [(name, kit) for name, kit in kits if kit is not None] or [("", _unsaid(words))]
        cells = [
            _cell(((name, kit[at]) for name, kit in worn_by), named, len(products) if kits else 1, words)
            for at in range(4)
        ]
        # usual practice for degreasing stands for what nobody states, and each cleaner of the work says it
        kept = task is not Task.PREPARATION or any(entry.task is task for p in products for entry in worn(p))
        asked = [one for one in work if one.task is task]
        # of a thinner nobody states the mask of, the sheet decides; the mask of a cleaner is told with the task
        masks = [one.respiratory or (words(NOT_STATED) if task is Task.MIXING else "") for one in asked]
        for at, texts in enumerate((masks, [one.hands for one in asked], [one.eyes for one in asked])):
            said = [f"{one.whose}: {text}" for one, text in zip(asked, texts, strict=True) if text]
            if said:
                cells[at] = "\n".join((*((cells[at],) if kept and kits else ()), *said))
        rows.append((words.word(task), *cells))
    columns = (
        Column(words("Task"), "w-12"),
        Column(words("Respiratory")),
        Column(words("Hands"), "w-25"),
        Column(words("Eyes"), "w-18"),
        Column(words("Body"), "w-15"),
    )
    return table_view(words("Personal protective equipment (PPE), by task"), columns, rows)


def _has(product: Product, task: Task) -> bool:
    """False where the task is none of the product's: a can is not mixed."""
    told = product.pack.form is not PackForm.AEROSOL or any(entry.task is task for entry in worn(product))
    return task is not Task.MIXING or told


def _unsaid(words: Words) -> tuple[str, str, str, str]:
    unsaid = words("not stated")
    return words(NOT_STATED), unsaid, unsaid, unsaid


def _kit(product: Product, task: Task, words: Words) -> tuple[str, str, str, str] | None:
    """For breathing, hands, eyes and body; by usual practice where the product states nothing; None for no row of its own."""
    stated = [entry for entry in worn(product) if entry.task is task]
    unsaid = words("not stated")
    if stated:
        cells = ([entry.respiratory, entry.gloves, entry.eyes, entry.skin] for entry in stated)
        breath, hands, eyes, skin = (
            "; ".join(dict.fromkeys(text for text in column if text)) for column in zip(*cells, strict=True)
        )
        return breath or unsaid, hands or unsaid, eyes or unsaid, skin or body_unstated([product], words) or unsaid
    if task is Task.ANY:
        return None
    if worn_at(product, task):
        as_ever = words("as for all tasks")
        return as_ever, as_ever, as_ever, as_ever
    breath, hands, eyes = (words(need) for need in usual_needs(task))
    usual = words("{} (common practice; none stated for the product)")
    return (
        usual.format(breath) if breath else words(NOT_STATED),
        usual.format(hands) if hands else unsaid,
        usual.format(eyes) if eyes else unsaid,
        (body_unstated([product], words) if task is not Task.PREPARATION else "") or unsaid,
    )


def _cell(texts: Iterable[tuple[str, str]], named: _Named, members: int, words: Words) -> str:
    found = _merged(texts)
    if len(found) == 1 and len(next(iter(found.values()))) == members:
        return next(iter(found))
    return "\n".join(words("{}: {}").format(named(owners), text) for text, owners in found.items())


def _first_aid(
    products: Sequence[Product], cleaners: Sequence[str], named: _Named, job: Job, words: Words
) -> TableView:
    listed = acts(products)
    rows = [(words.word(route), named(owners), act) for route, act, owners in listed]
    helped = {owner for _, _, owners in listed for owner in owners}
    unstated = [product.name for product in products if product.name not in helped]
    drunk, act = if_swallowed(job, words)
    if drunk:
        rows.append((words.word(Route.SWALLOWED), drunk, act))
    if unstated or cleaners:
        whose = apart([part for part in (named(unstated), *cleaners) if part])
        rows.append((words("any other") if drunk else words("any"), whose, words(NO_FIRST_AID)))
    columns = (Column(words("Exposure"), "w-15"), Column(words("Products"), "w-15"), Column(words("What to do")))
    return table_view(words("First aid"), columns, rows)


def _rules(
    products: Sequence[Product], alone: Sequence[HazardView], job: Job, named: _Named, words: Words
) -> TableView:
    """Air, storage, carriage, waste, duties and cautions: a line a text, with the products it is said of."""
    said = _merged(_said(products, alone, job, words))
    order = list(dict.fromkeys(name for name, _ in said))
    ranked = sorted(said.items(), key=lambda entry: order.index(entry[0][0]))
    together: dict[tuple[str, str], list[str]] = {}
    for (name, text), owners in ranked:
        together.setdefault((name, named(owners)), []).append(text)
    rows = [(name, whose, "\n".join(texts)) for (name, whose), texts in together.items()]
    columns = (Column(words("Subject"), "w-24"), Column(words("Products"), "w-12"), Column(words("Rule")))
    return table_view(words("Rules for the work, and the products each is for"), columns, rows)


def _said(
    products: Sequence[Product], alone: Sequence[HazardView], job: Job, words: Words
) -> Iterator[tuple[str, tuple[str, str]]]:
    for panel in alone:
        for line in (*panel.cautions, *panel.lines):
            yield panel.product, line
    for owners, text in standing_by_product(Task.CLEAN_UP, products, words, place=place_of(job)):
        for product in owners or products:
            yield product.name, (words.word(Task.CLEAN_UP), text)
