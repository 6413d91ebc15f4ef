"""Hazards of products as printed: signal word, statements in their official wording, protection by task, first aid.

The statements come from the published tables; a wording from memory is marked.
Called by `method_statement` and `data_sheet`.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from specgen.model.hazards import Hazards, Route, SignalWord, Task
from specgen.model.product import Product
from specgen.standards.citations import Basis
from specgen.standards.tables import table
from specgen.views.tables import Column, TableView, table_view
from specgen.views.wording import Words

_LEVEL = {SignalWord.DANGER: "danger", SignalWord.WARNING: "warning", SignalWord.NONE: "notice"}


@dataclass(frozen=True, slots=True)
class Statement:
    """A code with its wording; `unconfirmed` where the wording is from memory."""

    code: str
    text: str
    unconfirmed: bool


@dataclass(frozen=True, slots=True)
class HazardView:
    product: str
    level: str
    signal_word: str
    statements: tuple[Statement, ...]
    precautions: tuple[Statement, ...]
    data_sheet: str
    ventilation: str
    storage: str
    disposal: str
    cautions: tuple[tuple[str, str], ...]


def hazards(products: list[Product], words: Words) -> tuple[HazardView, ...]:
    """One entry a product, the gravest signal word first."""
    rank = list(_LEVEL)
    declared = [(product, product.hazards) for product in products if product.hazards is not None]
    ordered = sorted(declared, key=lambda pair: rank.index(pair[1].signal_word or SignalWord.NONE))
    return tuple(_hazard(product, declared, words) for product, declared in ordered)


def protection(products: list[Product], words: Words) -> TableView:
    """What to wear, by task in the order of the work; products that ask for the same at the same task share a row."""
    alike: dict[tuple[Task, tuple[str, ...]], list[str]] = {}
    for product in products:
        for entry in product.hazards.protection if product.hazards is not None else ():
            worn = (entry.respiratory or "", entry.gloves or "", entry.eyes or "", entry.skin or "")
            alike.setdefault((entry.task, worn), []).append(product.name)
    order = list(Task)
    rows = [
        (words.word(task), ", ".join(dict.fromkeys(names)) if len(products) > 1 else "", *worn)
        for (task, worn), names in sorted(alike.items(), key=lambda pair: order.index(pair[0][0]))
    ]
    columns = (
        Column(words("Task"), "w-12"),
        Column(words("Product"), "w-20"),
        Column(words("Breathing"), "w-25"),
        Column(words("Hands")),
        Column(words("Eyes")),
        Column(words("Skin")),
    )
    return table_view(words("What to wear"), columns, rows)


def spraying_wear(product: Product, *, breathing_only: bool = False) -> str:
    """What to wear while spraying the product, in a line; empty where nothing is stated."""
    stated = product.hazards.protection if product.hazards is not None else ()
    worn = [
        text
        for entry in stated
        if entry.task in {Task.SPRAYING, Task.ANY}
        for text in ((entry.respiratory, entry.gloves, entry.eyes, entry.skin)[: 1 if breathing_only else None])
        if text
    ]
    return "; ".join(dict.fromkeys(worn))


def first_aid(products: list[Product], words: Words) -> tuple[tuple[str, str], ...]:
    """(route, act), each act once; where acts differ from product to product, each names its products."""
    acts: dict[tuple[Route, str], list[str]] = {}
    for product in products:
        for entry in product.hazards.first_aid if product.hazards is not None else ():
            acts.setdefault((entry.route, entry.act), []).append(product.name)
    ways = [route for route, _ in acts]
    return tuple(
        (words.word(route) + (f" ({', '.join(names)})" if ways.count(route) > 1 else ""), act)
        for (route, act), names in sorted(acts.items(), key=lambda pair: list(Route).index(pair[0][0]))
    )


def _hazard(product: Product, declared: Hazards, words: Words) -> HazardView:
    signal = declared.signal_word or SignalWord.NONE
    return HazardView(
        product.name,
        _LEVEL[signal],
        words.word(signal),
        tuple(_statements("h_statements", declared.statements, words))
        + tuple(_statements("euh_statements", declared.supplemental, words)),
        tuple(_statements("p_statements", declared.precautions, words)),
        _sheet(declared, words),
        declared.ventilation or "",
        words.phrase(declared.storage_max),
        declared.disposal or "",
        tuple((words.word(caution.task), caution.text) for caution in declared.cautions),
    )


def _statements(name: str, codes: tuple[str, ...], words: Words) -> Iterator[Statement]:
    known = {row["id"]: row for row in table(name).rows}
    for code in codes:
        row = known.get(code)
        if row is None:
            yield Statement(code, words("wording not in the published table; see the safety data sheet"), True)
        else:
            yield Statement(code, row["text"], row["basis"] == Basis.MEMORY.name.lower())


def _sheet(declared: Hazards, words: Words) -> str:
    sheet = declared.safety_data_sheet
    if sheet is None:
        return ""
    parts = [sheet.number]
    if sheet.revision:
        parts.append(words("revision {}").format(sheet.revision))
    if sheet.date is not None:
        parts.append(sheet.date.isoformat())
    return ", ".join(parts) + (f" ({sheet.obtain})" if sheet.obtain else "")
