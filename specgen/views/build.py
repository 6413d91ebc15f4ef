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
from specgen.views.tables import Column, TableView, table_view
from specgen.views.wording import Words


@dataclass(frozen=True, slots=True)
class StepView:
    title: str
    text: str
    abrasive: str
    grade: str
    acceptance: str


@dataclass(frozen=True, slots=True)
class BuildView:
    letter: str
    title: str
    use: str
    items: TableView
    material: str
    condition: str
    preparation: str
    steps: tuple[StepView, ...]
    coats: TableView
    total: str
    waits: TableView
    before_next: tuple[tuple[str, str], ...]
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
        _items(letter, items, figures, words),
        f"{material}{thickness}",
        substrate.condition or "",
        preparation.title,
        tuple(_steps(preparation, words)),
        _coats(letter, system, spec, figures, words),
        _total(system, words),
        _wait_table(letter, system, preparation, spec, words),
        tuple((_coat_name(n, layer, words), layer.before_next) for n, layer in _numbered(system) if layer.before_next),
        _section(system, material, words),
    )


def _items(letter: str, items: list[Item], figures: Quantities, words: Words) -> TableView:
    columns = [
        Column(words("Item"), "w-12"),
        Column(words("Part"), "w-25"),
        Column(words("Count"), "w-8", numeric=True),
        Column(words("Area in all"), "w-12", numeric=True),
        Column(words("Stays bare, masked")),
        Column(words("On the part already")),
        Column(words("Hottest in service"), "w-12", numeric=True),
    ]
    return table_view(
        words("Items of build {}").format(letter), columns, [_item(item, figures, words) for item in items]
    )


def _item(item: Item, figures: Quantities, words: Words) -> tuple[str, ...]:
    area = figures.areas.get(item.id)
    old = "; ".join(
        ", ".join(part for part in (_family(coat.family, words), words.phrase(coat.thickness), coat.condition) if part)
        for coat in item.old_coats
    )
    masked = "; ".join(entry.what for entry in item.masked)
    printed = area.printed() if area is not None else ""
    return (item.id, item.name, str(item.count), printed, masked, old, words.phrase(item.service_temperature))


def _family(family: str | None, words: Words) -> str:
    return words(table("binder_families").row("id", family)["name"]) if family else words("unknown old paint")


def _steps(preparation: Preparation, words: Words) -> Iterator[StepView]:
    for step in preparation.steps:
        yield StepView(words.word(step.do), step.text, step.abrasive or "", step.grade or "", step.acceptance or "")


def _numbered(system: System) -> Iterator[tuple[int, Layer]]:
    return enumerate(system.layers, 1)


def _coat_name(number: int, layer: Layer, words: Words) -> str:
    return f"{number} {words.word(layer.role)}"


def _coats(letter: str, system: System, spec: Spec, figures: Quantities, words: Words) -> TableView:
    columns = [
        Column(words("Coat"), "w-10"),
        Column(words("Product, variant, order number"), "w-20"),
        Column(words("Passes"), "w-10"),
        Column(words("Wet film of a pass, by comb"), "w-10", numeric=True),
        Column(words("Dry film, least"), "w-10", numeric=True),
        Column(words("Dry film, nominal"), "w-10", numeric=True),
        Column(words("Dry film, most"), "w-10", numeric=True),
        Column(words("Wait before next coat"), "w-12"),
        Column(words("Needed"), "w-8", numeric=True),
    ]
    rows = [_coat(number, layer, system, spec, figures, words) for number, layer in _numbered(system)]
    return table_view(words("Coats of build {}, the first on the part").format(letter), columns, rows)


def _coat(number: int, layer: Layer, system: System, spec: Spec, figures: Quantities, words: Words) -> tuple[str, ...]:
    product, variant = spec.product_of(layer), spec.variant_of(layer)
    wet = figures.wet_targets.get((system.id, layer.id))
    packs = figures.layer_packs.get((system.id, layer.id))
    film = layer.film
    named = [product.name, *([f"{variant.name}\n{variant.order_number}"] if variant is not None else [])]
    return (
        _coat_name(number, layer, words),
        ", ".join(named),
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
    return (
        f"{layer.passes}"
        if flash is None
        else words("{passes},\n{wait} apart").format(passes=layer.passes, wait=words.phrase(flash))
    )


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


def _wait_table(letter: str, system: System, preparation: Preparation, spec: Spec, words: Words) -> TableView:
    columns = [
        Column(words("After"), "w-20"),
        Column(words("comes"), "w-20"),
        Column(words("Not before"), "w-15"),
        Column(words("Not later than"), "w-15"),
        Column(words("If it is later")),
    ]
    caption = words("Not before: waits of build {}, counted from the last pass").format(letter)
    return table_view(caption, columns, list(_waits(system, preparation, spec, words)))


def _waits(system: System, preparation: Preparation, spec: Spec, words: Words) -> Iterator[tuple[str, ...]]:
    names = [_coat_name(number, layer, words) for number, layer in _numbered(system)]
    if names and preparation.coat_within is not None:
        late = words("Prepare again from the last step.")
        yield words("last preparation step"), names[0], "", words.phrase(preparation.coat_within), late
    for at, (below, above) in enumerate(zip(system.layers, system.layers[1:], strict=False)):
        late = below.if_late or _product_if_late(below, above, spec)
        if below.hold is not None:
            yield names[at], names[at + 1], words.low(below.hold), words.high(below.hold), late
    if names and system.handle_after is not None:
        yield names[-1], words("handling the part"), words.phrase(system.handle_after), "", ""
    if names and system.service_after is not None:
        yield names[-1], words("putting into service"), words.phrase(system.service_after), "", ""


def _product_if_late(below: Layer, above: Layer, spec: Spec) -> str:
    windows = spec.product_of(below).overcoat
    found = next((w for name in (above.product, "any") for w in windows if w.by == name), None)
    return found.if_late or "" if found is not None else ""


def _section(system: System, material: str, words: Words) -> str:
    bands = [
        Band(_coat_name(number, layer, words), words.phrase(film), film.to("um"))
        for number, layer in _numbered(system)
        if (film := layer.film.nominal or layer.film.max or layer.film.min) is not None
    ]
    return layer_section(bands, material, words("Section through the coats, drawn to scale in height"))
