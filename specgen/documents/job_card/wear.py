"""What protects whoever works on the coats of one build: a table that is right for every coat, and the cautions at each.

Called by `card_work`. The table stands before the first coat; what to breathe while spraying is said again at the coat, for a card
may be open at its second side.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass

from specgen.documents.parts.caution_catalogue import NOT_STATED
from specgen.documents.parts.protection import body_unstated
from specgen.documents.parts.step_cautions import standing_at
from specgen.documents.parts.tables import Column, TableView, table_view
from specgen.documents.parts.wording import Words
from specgen.facts.product.dangers import traits_of
from specgen.facts.product.protection import usual_needs, worn_at
from specgen.model.application import Workplace
from specgen.model.hazards import Task
from specgen.model.product import Product

Kit = tuple[str, str, str, str]

_TASKS = (Task.MIXING, Task.SPRAYING, Task.SANDING, Task.CLEAN_UP)


@dataclass(frozen=True, slots=True, kw_only=True)
class Worked:
    """A coat with its product, and whether it is or may have to be sanded."""

    coat: str
    product: Product
    sanded: bool


def wear_table(coats: Sequence[Worked], words: Words) -> TableView:
    """By task, in the order of the work, with the coats it holds for; tasks that ask for the same at the same coats share a row."""
    shared: dict[tuple[str, Kit], list[Task]] = {}
    for task in _TASKS:
        alike: dict[Kit, list[str]] = {}
        for one in coats:
            if _has(one, task):
                alike.setdefault(_kit(one.product, task, words), []).append(one.coat)
        for kit, named in alike.items():
            whose = ", ".join(named) if len(coats) > 1 else ""
            shared.setdefault((whose, kit), []).append(task)
    columns = (
        Column(words("PPE"), "w-13"),
        Column(words("Respiratory")),
        Column(words("Hands"), "w-24"),
        Column(words("Eyes"), "w-20"),
        Column(words("Body"), "w-14"),
    )
    rows = []
    for (whose, kit), tasks in shared.items():
        at = ", ".join(map(words.word, tasks))
        rows.append((words("{}: {}").format(at, whose) if whose else at, *kit))
    return table_view("", columns, rows)


def breathing(product: Product, words: Words) -> str:
    """What to breathe through while spraying the product."""
    return _kit(product, Task.SPRAYING, words)[0]


def cautions(
    coats: Sequence[Worked], place: Workplace | None, at_steps: Mapping[str, str], words: Words
) -> tuple[tuple[tuple[str, str], ...], Mapping[str, tuple[str, ...]]]:
    """(task, sentences) of what holds at every coat that has the task, said once, and of each coat the sentences of its own.

    `at_steps` are the cautions that stand at a step of the preparation, with its name; they are sent to.
    """
    at_every: list[tuple[str, str]] = []
    own: dict[str, list[str]] = {one.coat: [] for one in coats}
    for task in (Task.MIXING, Task.SPRAYING, Task.SANDING):
        told = {
            one.coat: standing_at(task, [one.product], words, place=place)
            for one in coats
            if _has(one, task) and (task is not Task.MIXING or "two-pack" in traits_of(one.product))
        }
        # what one coat alone needs stands there
        several = list(told.values()) if len(told) > 1 else []
        common = [text for text in several[0] if all(text in texts for texts in several)] if several else []
        if common:
            at_every.append((words.word(task), " ".join(_sent(common, at_steps, words))))
        for coat, texts in told.items():
            own[coat] += [text for text in texts if text not in common and text not in own[coat]]
    return tuple(at_every), {coat: tuple(_sent(texts, at_steps, words)) for coat, texts in own.items()}


def _sent(texts: Sequence[str], at_steps: Mapping[str, str], words: Words) -> Iterator[str]:
    yield from (text for text in texts if text not in at_steps)
    if named := dict.fromkeys(at_steps[text] for text in texts if text in at_steps):
        yield words("The precautions under {} apply here too.").format(words(" and ").join(named))


def _has(one: Worked, task: Task) -> bool:
    if task is Task.MIXING:
        return "two-pack" in traits_of(one.product) or any(entry.task is task for entry in worn_at(one.product, task))
    return one.sanded or task is not Task.SANDING


def _kit(product: Product, task: Task, words: Words) -> Kit:
    """For breathing, hands, eyes and body; usual practice where nothing is stated, and no cell empty."""
    stated = worn_at(product, task)
    unsaid, usual = words("not stated"), words("{} (common practice)")
    if stated:
        worn = ((entry.respiratory, entry.gloves, entry.eyes, entry.skin) for entry in stated)
        breath, hands, eyes, skin = ("; ".join(dict.fromkeys(filter(None, part))) for part in zip(*worn, strict=True))
    else:
        breath, hands, eyes = (usual.format(words(need)) if need else "" for need in usual_needs(task))
        breath, skin = breath or words(NOT_STATED), ""
    return breath or unsaid, hands or unsaid, eyes or unsaid, skin or body_unstated([product], words) or unsaid
