"""What to wear, by task. Called by `cautions` for the table of a document, by `coats` and the cards for one line.

Where no product states anything of a task, usual practice of the published table stands in its place and is marked so.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence

from specgen.documents.parts.caution_catalogue import COVER_SKIN, NOT_STATED, USUAL_WEAR
from specgen.documents.parts.tables import Column, TableView, table_view
from specgen.documents.parts.wording import Words
from specgen.documents.parts.work_wear import WorkWear
from specgen.facts.product.dangers import Danger, dangers_of
from specgen.facts.product.protection import USUAL, usual_needs, worn, worn_at
from specgen.model.hazards import Task
from specgen.model.product import Product

_HARMS_SKIN: frozenset[Danger] = frozenset({"poison", "corrodes", "allergy", "absorbed", "irritates"})
_AS_THEY_ARE: Mapping[str, str] = {}


def protection(
    products: Sequence[Product], words: Words, work: Sequence[WorkWear] = (), short: Mapping[str, str] = _AS_THEY_ARE
) -> TableView:
    """What to wear, by task in the order of the work; products that ask for the same at the same task share a row.

    `work` is what the work of a job asks for beside its products, `short` what products are called in the table, by their names.
    Every task of the work has a row: a table that is silent on sanding is read as leave to go without.
    """
    alike: dict[tuple[Task, tuple[str, ...]], list[str]] = {}
    for product in products:
        for entry in worn(product):
            kit = (
                entry.respiratory or "",
                entry.gloves or "",
                entry.eyes or "",
                entry.skin or body_unstated([product], words),
            )
            alike.setdefault((entry.task, kit), []).append(short.get(product.name, product.name))
    rows: list[tuple[Task, tuple[str, ...]]] = [
        (task, (", ".join(dict.fromkeys(names)) if len(products) > 1 else "", *kit))
        for (task, kit), names in alike.items()
    ]
    stated = {task for task, *_ in rows}
    rows += [(one.task, (one.whose, one.respiratory or words(NOT_STATED), one.hands, one.eyes, "")) for one in work]
    # usual practice for degreasing stands for what nobody states, and each cleaner of the work has its row
    stated |= {one.task for one in work if one.task is Task.PREPARATION}
    rows += list(_usual(products, stated, short, words))
    order = list(Task)
    rows.sort(key=lambda row: order.index(row[0]))
    columns = (
        Column(words("Task"), "w-12"),
        Column(words("Product"), "w-20"),
        Column(words("Respiratory"), "w-25"),
        Column(words("Hands")),
        Column(words("Eyes")),
        Column(words("Body")),
    )
    return table_view(
        words("Personal protective equipment (PPE)"), columns, [(words.word(task), *rest) for task, rest in rows]
    )


def body_unstated(products: Sequence[Product], words: Words) -> str:
    """What covers the body where nobody states it: no bare skin where one of the products harms it; empty where none does."""
    return words(COVER_SKIN) if _HARMS_SKIN & {*dangers_of(products)} else ""


def spraying_wear(product: Product, *, breathing_only: bool = False) -> str:
    """What to wear while spraying the product, in a line; empty where nothing is stated."""
    return worn_line([product], Task.SPRAYING, breathing_only=breathing_only)


def worn_line(products: Sequence[Product], task: Task, *, breathing_only: bool = False) -> str:
    """What the products ask for at a task, in a line, each once; empty where nothing is stated."""
    texts = [
        text
        for product in products
        for entry in worn_at(product, task)
        for text in ((entry.respiratory, entry.gloves, entry.eyes, entry.skin)[: 1 if breathing_only else None])
        if text
    ]
    return "; ".join(dict.fromkeys(texts))


def worn_parts(product: Product, task: Task, words: Words) -> str:
    """What one product asks for at a task, each part of the body named; empty where nothing is stated."""
    parts = (
        (words("Respiratory"), "respiratory"),
        (words("Hands"), "gloves"),
        (words("Eyes"), "eyes"),
        (words("Body"), "skin"),
    )
    found = ((name, [getattr(entry, leaf) for entry in worn_at(product, task)]) for name, leaf in parts)
    return "; ".join(f"{name}: {', '.join(dict.fromkeys(filter(None, texts)))}" for name, texts in found if any(texts))


def usual_line(task: Task, words: Words) -> str:
    """Usual practice for a task in a line; empty where there is none."""
    names = (words("Respiratory"), words("Hands"), words("Eyes"))
    named = zip(names, (words(need) for need in usual_needs(task)), strict=True)
    return "; ".join(f"{name}: {text}" for name, text in named if text)


def _usual(
    products: Sequence[Product], stated: set[Task], short: Mapping[str, str], words: Words
) -> Iterator[tuple[Task, tuple[str, ...]]]:
    """Usual practice for the products that state nothing of a task; it names them where others state something."""
    for task in USUAL:
        silent = [product for product in products if not worn_at(product, task)]
        if not silent or (task is Task.PREPARATION and task in stated):
            continue
        needs = [words(need) for need in usual_needs(task)]
        if len(silent) == len(products):
            whose = words(USUAL_WEAR) if any(needs) else ""
        else:
            whose = ", ".join(dict.fromkeys(short.get(product.name, product.name) for product in silent))
            needs = [words("{} (common practice)").format(need) if need else "" for need in needs]
        breath, hands, eyes = needs
        body = "" if task is Task.PREPARATION else body_unstated(silent, words)
        yield task, (whose, breath or words(NOT_STATED), hands, eyes, body)
