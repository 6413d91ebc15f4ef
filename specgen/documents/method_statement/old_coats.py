"""Items that carry old paint: what is on them, how a repaired spot runs out into it, and what is masked.

Called by `build` for the section on preparation.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace

from specgen.documents.method_statement.conditions import Condition
from specgen.documents.method_statement.over_old_paint import over_old_paint
from specgen.documents.parts.coats import coat_name, numbered
from specgen.documents.parts.wording import Words
from specgen.facts.job.stack import old_paint_goes, stack
from specgen.figures.feather_edge import feather_edge
from specgen.model.job import Item, Job, OldCoat, PatchTest, Repair
from specgen.model.preparation import StepKind
from specgen.model.spec import Spec
from specgen.standards.tables import table


@dataclass(frozen=True, slots=True, kw_only=True)
class RepairView:
    """Items with the same old coats and widths. `old_coats` from the part up; `section` is a drawing or empty.

    `stays` is False where the preparation takes the old paint off all over. `drawn_above` names the items under which
    the same drawing stands already.
    """

    items: str
    stays: bool
    old_coats: tuple[str, ...]
    steps: tuple[Condition, ...]
    masked: tuple[str, ...]
    section: str
    caption: str
    drawn_above: str


def repairs(items: Sequence[Item], job: Job, spec: Spec, material: str, words: Words) -> tuple[RepairView, ...]:
    """One entry a set of items of a build that are alike under their old paint; items without old coats have none.

    The edge is drawn where a width is stated or the preparation feathers: old paint that is only sanded over has none.
    """
    alike: dict[tuple[tuple[OldCoat, ...], Repair | None, PatchTest | None], list[Item]] = {}
    for item in items:
        if _old_coats(item, job, spec):
            alike.setdefault((_old_coats(item, job, spec), item.repair, item.patch_test), []).append(item)
    found: list[RepairView] = []
    for group in alike.values():
        view = _repair(group, job, spec, material, words)
        drawn = next((other.items for other in found if view.section and other.section == view.section), "")
        found.append(replace(view, section="", caption="", drawn_above=drawn) if drawn else view)
    return tuple(found)


def _old_coats(item: Item, job: Job, spec: Spec) -> tuple[OldCoat, ...]:
    """What is on the item: what is said of it, else the paint the part comes with."""
    if item.old_coats:
        return item.old_coats
    whole = stack(job, item, spec)
    return tuple(old.coat for old in whole.old) if whole is not None else ()


def old_coat(coat: OldCoat, words: Words) -> str:
    """`alkyd, 60 µm, hard through, chalking class 1, dull`: what is said of a coat that is there already."""
    return ", ".join(part for part in (_measured(coat, words), *_seen(coat, words), coat.condition) if part)


def old_coat_in_short(coat: OldCoat, words: Words) -> str:
    """`alkyd, 60 µm, dull`: the same without what was measured on it, for a narrow column."""
    return ", ".join(part for part in (_measured(coat, words), coat.condition) if part)


def _measured(coat: OldCoat, words: Words) -> str:
    family = words(table("binder_families").row("id", coat.family)["name"]) if coat.family else ""
    return ", ".join(
        part for part in (family or words("existing coating, type unknown"), words.phrase(coat.thickness)) if part
    )


def _seen(coat: OldCoat, words: Words) -> Iterator[str]:
    if coat.age is not None:
        yield words("age {}").format(words.phrase(coat.age))
    for said, yes, no in (
        (coat.lead, words("contains lead"), words("free of lead")),
        (coat.chromate, words("contains chromate"), words("free of chromate")),
        (coat.cured, words("through-dry"), words("not through-dry")),
        (coat.sound, words("sound"), words("not sound")),
    ):
        if said is not None:
            yield yes if said else no
    if coat.rub is not None:
        yield words("solvent rub: {}").format(words.word(coat.rub))
    if coat.cross_cut is not None:
        yield words("cross-cut class {}, ISO 2409").format(coat.cross_cut)
    if coat.tape is not None:
        yield words("tape test rating {}, ASTM D3359").format(coat.tape.value)
    if coat.chalking is not None:
        yield words("chalking class {}, ISO 4628-6").format(coat.chalking)


def _repair(items: list[Item], job: Job, spec: Spec, material: str, words: Words) -> RepairView:
    old, widths = _old_coats(items[0], job, spec), items[0].repair
    stated = widths is not None and any((widths.feather, widths.sanded, widths.lap))
    stays = not old_paint_goes(job, items[0], spec)
    preparation, system = spec.preparation_of(job, items[0]), spec.system_of(job, items[0])
    feathered = preparation is not None and any(step.do is StepKind.FEATHER for step in preparation.steps)
    drawing = ""
    if stays and (stated or feathered) and system is not None:
        drawing = feather_edge(
            [_measured(coat, words) for coat in old],
            [coat_name(number, layer, words) for number, layer in numbered(system)],
            material,
            tuple(_key(widths, words)),
            words("Section through a repair edge"),
        )
    caption = (
        words("Repair edge, not to scale. Widths shown are minimum widths.")
        if stated
        else words("Repair edge, schematic: the source data state no widths, so none are shown.")
    )
    whole = stack(job, items[0], spec)
    return RepairView(
        items=", ".join(f"{item.id} {item.name}" for item in items),
        stays=stays,
        old_coats=tuple(old_coat(coat, words) for coat in old),
        steps=over_old_paint(whole, job, spec, words) if whole is not None else (),
        masked=tuple(_masked(items, words)),
        section=drawing,
        caption=caption if drawing else "",
        drawn_above="",
    )


def _key(widths: Repair | None, words: Words) -> Iterator[str]:
    feather, sanded, lap = (
        words.phrase(getattr(widths, name)) if widths is not None else "" for name in ("feather", "sanded", "lap")
    )
    yield words("A: stripped to the substrate")
    yield (
        words("B: existing coats feathered, one ring per coat, each at least {} wide").format(feather)
        if feather
        else words("B: existing coats feathered, one ring per coat")
    )
    ground = (
        words("C: sound existing coating abraded matt, at least {} wide").format(sanded)
        if sanded
        else words("C: sound existing coating abraded matt")
    )
    yield ground
    yield (
        words("New coats end within C, at least {} beyond B, each overlapping the edge of the one below").format(lap)
        if lap
        else words("New coats end within C, each overlapping the edge of the one below")
    )
    yield words("D: not part of the repair; where the whole part is recoated, abraded and coated as well")


def _masked(items: list[Item], words: Words) -> Iterator[str]:
    several = len(items) > 1
    for item in items:
        for entry in item.masked:
            area = f", {words.phrase(entry.area)}" if entry.area is not None else ""
            named = f"{item.id}: " if several else ""
            yield f"{named}{entry.what}{area}"
