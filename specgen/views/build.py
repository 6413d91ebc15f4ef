"""One way of building up paint: the items that share substrate, preparation and system, and everything said about them.

Called by `method_statement`. Items are grouped in the order of the job.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from specgen.figures.layer_section import Band, layer_section
from specgen.model.job import Item, Job
from specgen.model.preparation import Preparation, Substrate
from specgen.model.spec import Spec
from specgen.model.system import Layer, System
from specgen.plan.quantities import Quantities
from specgen.rules.film.sums import sum_of
from specgen.standards.tables import table
from specgen.trade.working import Working
from specgen.units.display import round_half_up
from specgen.units.quantity import Quantity
from specgen.views.wording import Words


@dataclass(frozen=True, slots=True)
class ItemRow:
    id: str
    name: str
    count: str
    area: str
    masked: str
    old_coats: str


@dataclass(frozen=True, slots=True)
class StepView:
    title: str
    text: str
    abrasive: str
    grade: str
    acceptance: str


@dataclass(frozen=True, slots=True)
class LayerRow:
    number: int
    role: str
    product: str
    variant: str
    order_number: str
    passes: str
    wet: str
    least: str
    nominal: str
    most: str
    hold: str
    packs: str


@dataclass(frozen=True, slots=True)
class WaitRow:
    """One line of the table of waits: what is done, what may follow, when at the earliest and at the latest."""

    after: str
    then: str
    not_before: str
    not_after: str
    if_late: str


@dataclass(frozen=True, slots=True)
class BuildView:
    letter: str
    title: str
    use: str
    items: tuple[ItemRow, ...]
    material: str
    condition: str
    preparation: str
    steps: tuple[StepView, ...]
    layers: tuple[LayerRow, ...]
    total: str
    waits: tuple[WaitRow, ...]
    section: str


def builds(job: Job, spec: Spec, figures: Quantities, words: Words) -> tuple[BuildView, ...]:
    """Every build of the job, lettered in the order it first appears."""
    groups: dict[tuple[str, str, str], list[Item]] = {}
    for item in job.items:
        system, preparation, substrate = _of(item, job, spec)
        key = (system.id, preparation.id, substrate.model_dump_json())
        groups.setdefault(key, []).append(item)
    return tuple(
        _build(_letter(number), items, job, spec, figures, words) for number, items in enumerate(groups.values())
    )


def _letter(number: int) -> str:
    return chr(ord("A") + number) if number < 26 else f"A{number - 25}"


def _of(item: Item, job: Job, spec: Spec) -> tuple[System, Preparation, Substrate]:
    system, preparation = spec.system_of(job, item), spec.preparation_of(job, item)
    substrate = spec.substrate_of(job, item)
    if system is None or preparation is None or substrate is None:
        raise ValueError(f"the item {item.id} is not complete; checking refuses it before it gets here")
    return system, preparation, substrate


def _build(letter: str, items: list[Item], job: Job, spec: Spec, figures: Quantities, words: Words) -> BuildView:
    system, preparation, substrate = _of(items[0], job, spec)
    material = words(table("materials").row("id", substrate.material)["name"])
    thickness = f", {words.phrase(substrate.thickness)}" if substrate.thickness is not None else ""
    return BuildView(
        letter,
        system.title,
        system.use or "",
        tuple(_item(item, figures, words) for item in items),
        f"{material}{thickness}",
        substrate.condition or "",
        preparation.title,
        tuple(_steps(preparation, words)),
        tuple(_layers(system, spec, figures, words)),
        _total(system, words),
        tuple(_waits(system, preparation, spec, words)),
        _section(system, material, words),
    )


def _item(item: Item, figures: Quantities, words: Words) -> ItemRow:
    area = figures.areas.get(item.id)
    old = "; ".join(
        ", ".join(part for part in (_family(coat.family, words), words.phrase(coat.thickness), coat.condition) if part)
        for coat in item.old_coats
    )
    masked = "; ".join(entry.what for entry in item.masked)
    return ItemRow(item.id, item.name, str(item.count), area.printed() if area is not None else "", masked, old)


def _family(family: str | None, words: Words) -> str:
    return words(table("binder_families").row("id", family)["name"]) if family else words("unknown old paint")


def _steps(preparation: Preparation, words: Words) -> Iterator[StepView]:
    for step in preparation.steps:
        yield StepView(words.word(step.do), step.text, step.abrasive or "", step.grade or "", step.acceptance or "")


def _layers(system: System, spec: Spec, figures: Quantities, words: Words) -> Iterator[LayerRow]:
    for number, layer in enumerate(system.layers, 1):
        product, variant = spec.product_of(layer), spec.variant_of(layer)
        wet = figures.wet_targets.get((system.id, layer.id))
        packs = figures.layer_packs.get((system.id, layer.id))
        film = layer.film
        yield LayerRow(
            number,
            words.word(layer.role),
            product.name,
            variant.name if variant is not None else "",
            variant.order_number if variant is not None else "",
            _passes(layer, words),
            words.phrase(layer.wet_target) if layer.wet_target is not None else _wet(wet, words),
            words.phrase(film.min or product.film.min),
            words.phrase(film.nominal),
            words.phrase(film.max or product.film.max),
            words.phrase(layer.hold),
            packs.printed() if packs is not None else "",
        )


def _wet(working: Working | None, words: Words) -> str:
    """The wet target as printed in the annex, with the second unit beside it."""
    if working is None:
        return ""
    rounded = str(round_half_up(working.number, working.places))
    return words.phrase(Quantity.of("thickness", working.number, working.unit, rounded))


def _passes(layer: Layer, words: Words) -> str:
    if layer.passes is None:
        return str(layer.coats) if layer.coats is not None else ""
    flash = layer.flash_between_passes
    return f"{layer.passes}" if flash is None else f"{layer.passes}, {words.phrase(flash)}"


def _total(system: System, words: Words) -> str:
    stated = system.total
    least = (stated.min if stated else None) or sum_of(system, "min")
    most = (stated.max if stated else None) or sum_of(system, "max")
    nominal = (stated.nominal if stated else None) or sum_of(system, "nominal")
    parts = []
    if least is not None:
        parts.append(words("at least {}").format(words.phrase(least)))
    if nominal is not None:
        parts.append(words("nominal {}").format(words.phrase(nominal)))
    if most is not None:
        parts.append(words("at most {}").format(words.phrase(most)))
    return ", ".join(parts)


def _waits(system: System, preparation: Preparation, spec: Spec, words: Words) -> Iterator[WaitRow]:
    first = system.layers[0] if system.layers else None
    if first is not None and preparation.coat_within is not None:
        late = words("prepare again from the last step")
        yield WaitRow(
            words("last preparation step"), words.word(first.role), "", words.phrase(preparation.coat_within), late
        )
    for below, above in zip(system.layers, system.layers[1:], strict=False):
        late = below.if_late or _product_if_late(below, above, spec)
        if below.hold is not None:
            yield WaitRow(
                words.word(below.role), words.word(above.role), words.low(below.hold), words.high(below.hold), late
            )
    if system.layers:
        last = words.word(system.layers[-1].role)
        if system.handle_after is not None:
            yield WaitRow(last, words("handling the part"), words.phrase(system.handle_after), "", "")
        if system.service_after is not None:
            yield WaitRow(last, words("putting into service"), words.phrase(system.service_after), "", "")


def _product_if_late(below: Layer, above: Layer, spec: Spec) -> str:
    windows = spec.product_of(below).overcoat
    found = next((w for name in (above.product, "any") for w in windows if w.by == name), None)
    return found.if_late or "" if found is not None else ""


def _section(system: System, material: str, words: Words) -> str:
    bands = [
        Band(f"{number}  {words.word(layer.role)}", words.phrase(film), film.to("um"))
        for number, layer in enumerate(system.layers, 1)
        if (film := layer.film.nominal or layer.film.max or layer.film.min) is not None
    ]
    return layer_section(bands, material, words("Section through the coats, drawn to scale in height"))
