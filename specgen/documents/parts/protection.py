"""What to wear, by task. Called by `cautions` for the table of a document, by `coats` and the cards for one line.

Where no product states anything of a task, usual practice of the published table stands in its place and is marked so.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from specgen.documents.parts.caution_catalogue import NOT_STATED, USUAL_WEAR
from specgen.documents.parts.tables import Column, TableView, table_view
from specgen.documents.parts.wording import Words
from specgen.facts.product.hazard_facts import isocyanates_in
from specgen.model.hazards import Task
from specgen.model.product import Product
from specgen.standards.tables import table

# The tasks a table of protection never leaves out, with the rows of protective_equipment for breathing, hands and eyes.
_ALWAYS: tuple[tuple[Task, str, str], ...] = (
    (Task.PREPARATION, "", "gloves_splash"),
    (Task.SANDING, "breath_sanding", ""),
    (Task.SPRAYING, "", ""),
    (Task.CLEAN_UP, "", "gloves_splash"),
)


def protection(products: Sequence[Product], words: Words) -> TableView:
    """What to wear, by task in the order of the work; products that ask for the same at the same task share a row.

    Every task of the work has a row: a table that is silent on sanding is read as leave to go without.
    """
    alike: dict[tuple[Task, tuple[str, ...]], list[str]] = {}
    for product in products:
        for entry in product.hazards.protection if product.hazards is not None else ():
            worn = (entry.respiratory or "", entry.gloves or "", entry.eyes or "", entry.skin or "")
            alike.setdefault((entry.task, worn), []).append(product.name)
    rows: list[tuple[Task, tuple[str, ...]]] = [
        (task, (", ".join(dict.fromkeys(names)) if len(products) > 1 else "", *worn))
        for (task, worn), names in alike.items()
    ]
    for product in products:
        if _needs_air(product) and not _states(product, Task.CLEAN_UP):
            # spray and vapour are still in the air when guns and masking are cleared away
            spraying = [
                worn for (task, worn), names in alike.items() if task is Task.SPRAYING and product.name in names
            ]
            rows += [(Task.CLEAN_UP, (product.name if len(products) > 1 else "", *worn)) for worn in spraying[:1]]
    stated = {task for task, *_ in rows}
    if products and Task.ANY not in stated:
        rows += list(_usual(stated, words))
    order = list(Task)
    rows.sort(key=lambda row: order.index(row[0]))
    columns = (
        Column(words("Task"), "w-12"),
        Column(words("Product"), "w-20"),
        Column(words("Breathing"), "w-25"),
        Column(words("Hands")),
        Column(words("Eyes")),
        Column(words("Skin")),
    )
    return table_view(words("What to wear"), columns, [(words.word(task), *rest) for task, rest in rows])


def spraying_wear(product: Product, *, breathing_only: bool = False) -> str:
    """What to wear while spraying the product, in a line; empty where nothing is stated."""
    return worn_at([product], Task.SPRAYING, breathing_only=breathing_only)


def worn_at(products: Sequence[Product], task: Task, *, breathing_only: bool = False) -> str:
    """What the products ask for at a task, in a line, each once; empty where nothing is stated."""
    worn = [
        text
        for product in products
        for entry in (product.hazards.protection if product.hazards is not None else ())
        if entry.task in {task, Task.ANY}
        for text in ((entry.respiratory, entry.gloves, entry.eyes, entry.skin)[: 1 if breathing_only else None])
        if text
    ]
    return "; ".join(dict.fromkeys(worn))


def usual_line(task: Task, words: Words) -> str:
    """Usual practice for a task in a line; empty where there is none."""
    breath, hands = usual_wear(task, words)
    named = ((words("Breathing"), breath), (words("Hands"), hands))
    return "; ".join(f"{name}: {text}" for name, text in named if text)


def usual_wear(task: Task, words: Words) -> tuple[str, str]:
    """Breathing and hands by usual practice for a task of which nothing is stated; both empty where there is none."""
    ids = next(((breath, hands) for known, breath, hands in _ALWAYS if known is task), ("", ""))
    breath, hands = (words(table("protective_equipment").row("id", id)["need"]) if id else "" for id in ids)
    return breath, hands


def _needs_air(product: Product) -> bool:
    return isocyanates_in(product) is not False


def _states(product: Product, task: Task) -> bool:
    entries = product.hazards.protection if product.hazards is not None else ()
    return any(entry.task in {task, Task.ANY} for entry in entries)


def _usual(stated: set[Task], words: Words) -> Iterator[tuple[Task, tuple[str, ...]]]:
    for task, *_ in _ALWAYS:
        if task not in stated:
            breath, hands = usual_wear(task, words)
            known = words(USUAL_WEAR) if breath or hands else ""
            yield task, (known, breath or words(NOT_STATED), hands, "", "")
