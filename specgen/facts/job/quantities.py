"""The figures of a job, worked out from its sources: areas, volume solids, wet targets, cans and litres.

Every figure is a Working. What cannot be worked out is kept as NotKnown, with its reason and the place of the value at
fault, so that a rule can say so. Called by the rules on quantities, by the documents and by the comparison.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass, field
from fractions import Fraction
from functools import partial

from specgen.facts.job.areas import item_area, summed_area
from specgen.facts.job.packs import Need, contents_of, loss_on_the_way, need_of_cans, need_of_tins
from specgen.facts.layer.figures import solids_in_can, solids_sprayed, wet_target
from specgen.facts.layer.film import Film, planned_film
from specgen.facts.memo import memoised
from specgen.facts.pairs.parts import BLASTING, is_jetting
from specgen.model.job import DeadVolumeTable, Item, Job
from specgen.model.product import Product, Variant
from specgen.model.spec import Spec
from specgen.model.system import Layer, System
from specgen.standards.citations import ARITHMETIC
from specgen.trade.consumption import Demand, film_volume
from specgen.trade.dead_volume import DeadVolume, dead_volume
from specgen.trade.film import PERCENT
from specgen.trade.given import Given, Source, take
from specgen.trade.known import Known, NotKnown, known, worked_out
from specgen.trade.loss import Loss
from specgen.trade.working import Working, work

_DEAD_VOLUME = {
    DeadVolumeTable.BY_ROUGHNESS: DeadVolume.BY_ROUGHNESS,
    DeadVolumeTable.BY_BAND: DeadVolume.BY_BAND,
    DeadVolumeTable.WHOLE_PROFILE: DeadVolume.WHOLE_PROFILE,
}
_OF_LAYER, _OF_PACK = ("layer-packs.", "litres-for-layer-packs."), ("packs.", "litres-for-packs.")

LayerKey = tuple[str, str]
PackKey = tuple[str, str | None]


def named_pack(product: str, variant: str | None) -> str:
    """A product, with its variant where one is named."""
    return product if variant is None else f"{product} {variant}"


Solids = Given | Working | NotKnown


@dataclass(slots=True)
class Quantities:
    """Every figure of one job. Keys: item id; (system, layer) ids; (product, variant) ids."""

    areas: dict[str, Working] = field(default_factory=dict)
    wet_targets: dict[LayerKey, Working] = field(default_factory=dict)
    wet_thinnest: dict[LayerKey, Working] = field(default_factory=dict)
    layer_packs: dict[LayerKey, Working] = field(default_factory=dict)
    packs: dict[PackKey, Working] = field(default_factory=dict)
    thinners: dict[LayerKey, Working] = field(default_factory=dict)
    film_volumes: dict[LayerKey, Working] = field(default_factory=dict)
    supporting: list[Working] = field(default_factory=list)
    not_known: list[NotKnown] = field(default_factory=list)

    def workings(self) -> Iterator[Working]:
        """Every Working of the job, each before those that build on it."""
        seen: dict[str, Working] = {}
        groups = (self.supporting, self.areas.values(), self.wet_targets.values(), self.wet_thinnest.values())
        needs = (self.layer_packs.values(), self.packs.values(), self.thinners.values(), self.film_volumes.values())
        for group in (*groups, *needs):
            for working in group:
                if seen.setdefault(working.id, working) != working:
                    raise ValueError(f"two figures of the job are called {working.id}")
        yield from seen.values()

    def packs_together(self, coats: Sequence[LayerKey], ordered: PackKey) -> Working | None:
        """The packs of coats that are sprayed from the same ones: no more than are ordered for the job. None where one is not known."""
        held = [self.layer_packs[key] for key in coats if key in self.layer_packs]
        if not held or len(held) < len(coats):
            return None
        most = self.packs[ordered].number if ordered in self.packs else None
        added = sum((one.number for one in held), Fraction(0))
        return held[0]._replace(result=added if most is None else min(added, most))

    def told_once(self) -> tuple[Working, ...]:
        """The workings, without those of a coat that is the only one of its product: the packs of the product say the same."""
        listed = [(entry, (entry.substituted(), entry.printed())) for entry in self.workings()]
        told = {figures for entry, figures in listed if entry.id.startswith(_OF_PACK)}
        return tuple(e for e, figures in listed if not (e.id.startswith(_OF_LAYER) and figures in told))


def ordered_as(layer: Layer) -> PackKey:
    """What is ordered for a coat: its product and variant."""
    return layer.product or "", layer.variant


def quantities(job: Job, spec: Spec) -> Quantities:
    """All figures of a job that its sources allow."""
    return _work_out(spec, job.id)


@memoised
def _work_out(spec: Spec, job_id: str) -> Quantities:
    found, job = Quantities(), spec.jobs[job_id]
    for item in job.items:
        _area(found, job, item)
    for system in spec.systems_of(job):
        for layer in system.layers:
            _wet(found, system, layer, spec)
    _packs(found, job, spec)
    return found


@memoised
def _solids(
    spec: Spec, product_id: str, variant_id: str | None, of: Callable[[Product, Variant | None], Solids]
) -> Solids:
    """Volume solids, `of` the can or as sprayed: the same for every job that uses the product."""
    product = spec.products[product_id]
    return of(product, product.variant(variant_id) if variant_id else None)


def _told(found: Quantities, answer: Known | NotKnown) -> Known | None:
    """The answer; one that is not known is put among those of the job.

    Every layer and pack of a product meets the same fault in it; it is told once.
    """
    if isinstance(answer, NotKnown) and (answer.at, answer.why) not in {(gap.at, gap.why) for gap in found.not_known}:
        found.not_known.append(answer)
    return known(answer)


def _area(found: Quantities, job: Job, item: Item) -> None:
    area = _told(found, item_area(item, ("jobs", job.id, "items", item.id)))
    if area is not None:
        found.supporting.extend(area[0])
        found.areas[item.id] = area[1]


def _wet(found: Quantities, system: System, layer: Layer, spec: Spec) -> None:
    if layer.product is None:
        # how much of the wet film stays is told by the product that is chosen
        return
    solids = _solids(spec, layer.product, layer.variant, solids_sprayed)
    if isinstance(solids, NotKnown):
        # a comb without solids stays without a target; only what cannot be is told
        if solids.is_fault:
            _told(found, solids)
        return
    if isinstance(solids, Working):
        found.supporting.append(solids)
    at = ("systems", system.id, "layers", layer.id)
    wet = _told(found, worked_out(f"WFT of {layer.id}", partial(wet_target, system, layer, spec, solids), at))
    if wet is not None:
        found.supporting.extend(wet[0])
        if wet[1] is not None:
            found.wet_targets[system.id, layer.id] = wet[1]
            supporting, thinnest = wet_target(system, layer, spec, solids, thinnest=True)
            found.supporting.extend(supporting)
            if thinnest is not None:
                found.wet_thinnest[system.id, layer.id] = thinnest


def _packs(found: Quantities, job: Job, spec: Spec) -> None:
    by_pack: dict[PackKey, list[tuple[LayerKey, Demand]]] = {}
    profile, panels = _profile(found, job), _panels(job)
    for system in spec.systems_of(job):
        items = [item for item in job.items if spec.system_of(job, item) is system and item.id in found.areas]
        blasted = [item for item in items if has_profile(job, item, spec)] if profile is not None else []
        whole = _together(found, job, f"area-of.{system.id}", items)
        rough = whole if blasted == items else _together(found, job, f"blasted-area-of.{system.id}", blasted)
        for layer in system.layers:
            film = planned_film(system, layer, spec)
            if layer.product is None:
                _film_volume(found, (system.id, layer.id), film, whole)
                continue
            wanted = by_pack.setdefault((layer.product, layer.variant), [])
            if film is not None and whole is not None:
                wanted.append(((system.id, layer.id), Demand(whole, film.given)))
                if panels is not None:
                    wanted.append(((system.id, layer.id), Demand(panels, film.given)))
            if layer is system.layers[0] and profile is not None and rough is not None:
                wanted.append(((system.id, layer.id), Demand(rough, profile)))
    for key, demands in by_pack.items():
        if demands:
            _pack(found, job, spec, key, demands)
    for system in spec.systems_of(job):
        for layer in system.layers:
            _thinner(found, system, layer)


def _film_volume(found: Quantities, key: LayerKey, film: Film | None, area: Working | None) -> None:
    """The dry film of a coat whose product is not chosen: what of it has to lie on the parts, whatever the paint."""
    if film is None or area is None:
        return
    found.film_volumes[key] = film_volume(f"film-volume.{key[0]}.{key[1]}", area, film.given)


def _together(found: Quantities, job: Job, name: str, items: list[Item]) -> Working | None:
    """The areas of several items as one figure, so that the packs of a job with many items can still be followed."""
    if not items:
        return None
    areas = [found.areas[item.id] for item in items]
    at = ("jobs", job.id, "items", items[0].id)
    return _told(found, worked_out("area of several items", partial(summed_area, name, areas, found.supporting), at))


def is_blasted(job: Job, item: Item, spec: Spec) -> bool:
    """True where the preparation blasts the item, or jets it down to the profile of an earlier blasting."""
    preparation, substrate = spec.preparation_of(job, item), spec.substrate_of(job, item)
    if preparation is None:
        return False
    bared = substrate is not None and substrate.has_profile is True
    return any(step.do in BLASTING or (bared and is_jetting(step)) for step in preparation.steps)


def has_profile(job: Job, item: Item, spec: Spec) -> bool:
    """True where the first coat has a profile to fill: blasted or jetted bare, come blasted, or given one by another tool."""
    preparation, substrate = spec.preparation_of(job, item), spec.substrate_of(job, item)
    comes_blasted = substrate is not None and substrate.material == "steel_blasted"
    made = preparation is not None and any(step.profile is not None for step in preparation.steps)
    return comes_blasted or made or is_blasted(job, item, spec)


def _profile(found: Quantities, job: Job) -> Working | None:
    """The dry film that fills the blast profile, counted once, for the first coat on it."""
    consumption = job.consumption
    if consumption is None or consumption.profile is None or consumption.dead_volume is None:
        return None
    path = ("jobs", job.id, "consumption", "profile")
    height, convention = Given(consumption.profile, ".".join(path)), _DEAD_VOLUME[consumption.dead_volume]
    work_out = partial(dead_volume, f"dead-volume.{job.id}", height, convention)
    filled = _told(found, worked_out("dead volume of the profile", work_out, path))
    if filled is not None:
        found.supporting.append(filled)
    return filled


def _thinner(found: Quantities, system: System, layer: Layer) -> None:
    """The thinner a coat takes: its share of the litres of paint that are ordered for it."""
    name = f"litres-for-layer-packs.{system.id}.{layer.id}"
    paint = next((working for working in found.supporting if working.id == name), None)
    if layer.thinner is None or layer.thinner.base == 0 or paint is None:
        return
    share = Given(layer.thinner, f"systems.{system.id}.layers.{layer.id}.thinner")
    inputs = (
        take("V", "paint required", paint, "volume", "mL"),
        take("t", "thinner added, by volume", share, "percentage", "%"),
    )
    found.thinners[system.id, layer.id] = work(
        f"thinner.{system.id}.{layer.id}",
        "thinner required",
        "ceil(V * t / 100)",
        inputs,
        kind="volume",
        unit="mL",
        places=0,
        source=ARITHMETIC,
        note=PERCENT,
    )


def _panels(job: Job) -> Given | None:
    """The area of test panels and patches, which gets every coat of each system beside the parts."""
    area = job.consumption.test_area if job.consumption is not None else None
    return Given(area, f"jobs.{job.id}.consumption.test_area") if area is not None else None


def _pack(found: Quantities, job: Job, spec: Spec, key: PackKey, demands: list[tuple[LayerKey, Demand]]) -> None:
    product = spec.products[key[0]]
    variant = product.variant(key[1]) if key[1] else None
    fill, loss = contents_of(product, variant), loss_on_the_way(job, product)
    solids = _solids(spec, *key, solids_in_can)
    if isinstance(fill, NotKnown) or isinstance(loss, NotKnown) or isinstance(solids, NotKnown):
        gaps = [entry for entry in (fill, loss, solids) if isinstance(entry, NotKnown)]
        # what cannot be is told before what is only missing
        _told(found, min(gaps, key=lambda gap: gap.missing != ()))
        return
    if isinstance(solids, Working):
        found.supporting.append(solids)
    at = ("products", product.id, "pack")
    _told(found, worked_out("packs", partial(_count, found, key, demands, product, (fill, loss, solids)), at))


def _count(
    found: Quantities,
    key: PackKey,
    demands: list[tuple[LayerKey, Demand]],
    product: Product,
    given: tuple[Given, Given | Loss, Source],
) -> NotKnown | None:
    """Put the packs of each layer and of all layers together among the figures. `given`: contents, loss, volume solids."""
    name, (fill, loss, solids) = ".".join(part for part in key if part), given
    need: Need | NotKnown
    if isinstance(loss, Given):
        need = need_of_cans(found.supporting, product, name, fill, solids, loss)
    else:
        need = need_of_tins(found.supporting, product, fill, solids, loss)
    if isinstance(need, NotKnown):
        return need
    for layer_key in dict.fromkeys(at for at, _ in demands):
        of_layer = [demand for at, demand in demands if at == layer_key]
        found.layer_packs[layer_key] = need(f"layer-packs.{layer_key[0]}.{layer_key[1]}", of_layer)
    found.packs[key] = need(f"packs.{name}", [demand for _, demand in demands])
    return None
