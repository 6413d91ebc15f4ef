"""The figures of a job, worked out from its sources: areas, volume solids, wet targets, cans and litres.

Every figure is a Working. What cannot be worked out is kept with its reason and the place of the value at fault, so that a rule can
say so. Called by the rules on quantities and by the views.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator
from dataclasses import dataclass, field
from functools import partial

from specgen.model.job import Item, Job
from specgen.model.product import PackForm, Product
from specgen.model.spec import Spec
from specgen.model.system import Layer, System
from specgen.model.walk import Path
from specgen.plan.areas import item_area
from specgen.plan.layer_figures import film_ordered, solids_in_can, solids_sprayed, wet_target
from specgen.trade.cans import cans
from specgen.trade.consumption import Demand, litres, packs
from specgen.trade.given import Given, Source
from specgen.trade.loss import LossShare
from specgen.trade.solids import solids_from_volume
from specgen.trade.working import Working, WorkingError
from specgen.units.quantity import Quantity

LayerKey = tuple[str, str]
PackKey = tuple[str, str | None]


@dataclass(frozen=True, slots=True)
class Unsolved:
    """A figure that cannot be worked out: where to look, and why."""

    path: Path
    why: str


@dataclass(slots=True)
class Quantities:
    """Every figure of one job. Keys: item id; (system, layer) ids; (product, variant) ids."""

    areas: dict[str, Working] = field(default_factory=dict)
    wet_targets: dict[LayerKey, Working] = field(default_factory=dict)
    layer_packs: dict[LayerKey, Working] = field(default_factory=dict)
    packs: dict[PackKey, Working] = field(default_factory=dict)
    supporting: list[Working] = field(default_factory=list)
    unsolved: list[Unsolved] = field(default_factory=list)

    def workings(self) -> Iterator[Working]:
        """Every Working of the job, each before those that build on it."""
        seen: dict[str, Working] = {}
        groups = (self.supporting, self.areas.values(), self.wet_targets.values())
        for group in (*groups, self.layer_packs.values(), self.packs.values()):
            for working in group:
                seen.setdefault(working.id, working)
        yield from seen.values()


def quantities(job: Job, spec: Spec) -> Quantities:
    """All figures of a job that its sources allow."""
    found = Quantities()
    for item in job.items:
        _try(found, ("jobs", job.id, "items", item.id), partial(_area, found, job, item))
    for system in spec.systems_of(job):
        for layer in system.layers:
            _try(found, ("systems", system.id, "layers", layer.id), partial(_wet, found, system, layer, spec))
    _packs(found, job, spec)
    return found


def _try(found: Quantities, path: Path, work_out: Callable[[], None]) -> None:
    try:
        work_out()
    except WorkingError as error:
        found.unsolved.append(Unsolved(path, str(error)))


def _area(found: Quantities, job: Job, item: Item) -> None:
    supporting, area = item_area(item, ("jobs", job.id, "items", item.id))
    found.supporting.extend(supporting)
    if area is not None:
        found.areas[item.id] = area


def _wet(found: Quantities, system: System, layer: Layer, spec: Spec) -> None:
    solids = solids_sprayed(layer, spec)
    if isinstance(solids, Working):
        found.supporting.append(solids)
    supporting, target = wet_target(system, layer, solids)
    found.supporting.extend(supporting)
    if target is not None:
        found.wet_targets[system.id, layer.id] = target


def _packs(found: Quantities, job: Job, spec: Spec) -> None:
    by_pack: dict[PackKey, list[tuple[LayerKey, Demand]]] = {}
    for item in job.items:
        system = spec.system_of(job, item)
        if system is None or item.id not in found.areas:
            continue
        for layer in system.layers:
            film = film_ordered(system, layer)
            if film is not None:
                demand = ((system.id, layer.id), Demand(found.areas[item.id], film))
                by_pack.setdefault((layer.product, layer.variant), []).append(demand)
    for key, demands in by_pack.items():
        _try(found, ("products", key[0], "pack"), partial(_pack, found, job, spec, key, demands))


def _pack(found: Quantities, job: Job, spec: Spec, key: PackKey, demands: list[tuple[LayerKey, Demand]]) -> None:
    product = spec.products[key[0]]
    name = "-".join(part for part in key if part)
    variant = product.variant(key[1]) if key[1] else None
    own_fill = variant.fill if variant is not None else None
    fill = own_fill or product.pack.fill
    transfer = job.consumption.transfer_efficiency if job.consumption is not None else None
    solids = solids_in_can(product, variant)
    if fill is None:
        found.unsolved.append(
            Unsolved(("products", product.id, "pack", "fill"), "the contents of the pack are not stated")
        )
        return
    if transfer is None:
        path = ("jobs", job.id, "consumption", "transfer_efficiency")
        found.unsolved.append(Unsolved(path, "the transfer efficiency of the job is not stated"))
        return
    if solids is None:
        path = ("products", product.id, "solids", "in_can")
        found.unsolved.append(Unsolved(path, "neither volume solids nor a composition is stated"))
        return
    if isinstance(solids, Working):
        found.supporting.append(solids)
    need = _need_of(found, product, name, Given(fill, f"products.{product.id}.pack.fill"), solids, job)
    for layer_key in dict.fromkeys(at for at, _ in demands):
        of_layer = [demand for at, demand in demands if at == layer_key]
        found.layer_packs[layer_key] = need(f"packs-{layer_key[0]}-{layer_key[1]}", of_layer)
    found.packs[key] = need(f"packs-{name}", [demand for _, demand in demands])


def _need_of(
    found: Quantities, product: Product, name: str, contents: Given, solids: Source, job: Job
) -> Callable[[str, list[Demand]], Working]:
    """How packs of a product are reckoned: cans by their solids, tins by their litres."""
    consumption = job.consumption
    if consumption is None or consumption.transfer_efficiency is None:
        raise WorkingError("the transfer efficiency of the job is not stated")
    origin = f"jobs.{job.id}.consumption.transfer_efficiency"
    efficiency = Given(consumption.transfer_efficiency, origin)
    if product.pack.form is PackForm.AEROSOL:
        volume = solids_from_volume(f"solids-{name}", contents, solids)
        found.supporting.append(volume)
        stated = product.pack.delivered
        all_of_it = Given(Quantity.of("share", 100, "%"), "nothing is stated, so all of the contents")
        delivered = all_of_it if stated is None else Given(stated, f"products.{product.id}.pack.delivered")
        return lambda key, demands: cans(key, demands, volume, delivered, efficiency)
    lost = Given(Quantity.of("share", 100 - consumption.transfer_efficiency.to("%"), "%"), origin)

    def tins(key: str, demands: list[Demand]) -> Working:
        amount = litres(f"litres-{key}", demands, solids, LossShare(lost))
        found.supporting.append(amount)
        return packs(key, amount, contents)

    return tins
