"""Items that carry old paint: what is on them, how a repaired spot runs out into it, and what is masked.

Called by `build` for the section on preparation.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from specgen.figures.feather_edge import feather_edge
from specgen.model.job import Item, OldCoat, Repair
from specgen.model.preparation import Preparation, StepKind
from specgen.model.system import System
from specgen.standards.tables import table
from specgen.views.coats import coat_name, numbered
from specgen.views.wording import Words


@dataclass(frozen=True, slots=True)
class RepairView:
    """Items with the same old coats and widths. `old_coats` from the part up; `section` is a drawing or empty."""

    items: str
    old_coats: tuple[str, ...]
    masked: tuple[str, ...]
    section: str
    caption: str


def repairs(
    items: Sequence[Item], preparation: Preparation, system: System, material: str, words: Words
) -> tuple[RepairView, ...]:
    """One entry a set of items of a build that are alike under their old paint; items without old coats have none.

    The edge is drawn where a width is stated or the preparation feathers: old paint that is only sanded over has none.
    """
    feathered = any(step.do is StepKind.FEATHER for step in preparation.steps)
    alike: dict[tuple[tuple[OldCoat, ...], Repair | None], list[Item]] = {}
    for item in items:
        if item.old_coats:
            alike.setdefault((item.old_coats, item.repair), []).append(item)
    return tuple(_repair(group, feathered, system, material, words) for group in alike.values())


def old_coat(coat: OldCoat, words: Words) -> str:
    """`alkyd, 60 µm, chalked`."""
    return ", ".join(part for part in (_measured(coat, words), coat.condition) if part)


def _measured(coat: OldCoat, words: Words) -> str:
    family = words(table("binder_families").row("id", coat.family)["name"]) if coat.family else ""
    return ", ".join(part for part in (family or words("unknown old paint"), words.phrase(coat.thickness)) if part)


def _repair(items: list[Item], feathered: bool, system: System, material: str, words: Words) -> RepairView:
    old = items[0].old_coats
    widths = items[0].repair
    stated = widths is not None and any((widths.feather, widths.sanded, widths.lap))
    drawing = ""
    if stated or feathered:
        drawing = feather_edge(
            [_measured(coat, words) for coat in old],
            [coat_name(number, layer, words) for number, layer in numbered(system)],
            material,
            tuple(_key(widths, words)),
            words("Section through the edge of a repair"),
        )
    caption = (
        words("Edge of a repair, not to scale. The widths are the least allowed.")
        if stated
        else words("Edge of a repair in principle: the sources state no widths, and the drawing gives none.")
    )
    return RepairView(
        ", ".join(f"{item.id} {item.name}" for item in items),
        tuple(old_coat(coat, words) for coat in old),
        tuple(_masked(items, words)),
        drawing,
        caption if drawing else "",
    )


def _key(widths: Repair | None, words: Words) -> Iterator[str]:
    feather, sanded, lap = (
        words.phrase(getattr(widths, name)) if widths is not None else "" for name in ("feather", "sanded", "lap")
    )
    yield words("A: taken down to the part, all old paint off")
    yield (
        words("B: old coats ground back in rings, each at least {} wide").format(feather)
        if feather
        else words("B: old coats ground back in rings, one ring a coat")
    )
    ground = (
        words("C: sound old paint sanded matt, at least {} wide").format(sanded)
        if sanded
        else words("C: sound old paint sanded matt")
    )
    yield ground
    yield (
        words("New coats end within C, at least {} beyond B, each over the end of the one below").format(lap)
        if lap
        else words("New coats end within C, each over the end of the one below")
    )
    yield words("D: left as it is")


def _masked(items: list[Item], words: Words) -> Iterator[str]:
    several = len(items) > 1
    for item in items:
        for entry in item.masked:
            area = f", {words.phrase(entry.area)}" if entry.area is not None else ""
            named = f"{item.id}: " if several else ""
            yield f"{named}{entry.what}{area}"
