"""The figures of a job, worked out from its sources: areas, volume solids, wet targets, cans and litres.

Every figure is a Working. What cannot be worked out is kept with its reason and the place of the value at fault, so
that a rule can say so. Called by the rules on quantities and by the views.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator
from dataclasses import dataclass, field
from functools import partial

from specgen.facts.faults import FaultyValueError, NotStatedError
from specgen.facts.job.areas import item_area, summed_area
from specgen.facts.job.packs import contents_of, loss_on_the_way, need_of_cans, need_of_tins
from specgen.facts.layer.figures import solids_in_can, solids_sprayed, wet_target
from specgen.facts.layer.film import planned_film
from specgen.facts.memo import memoised
from specgen.model.job import DeadVolumeTable, Item, Job
from specgen.model.preparation import StepKind
from specgen.model.spec import Spec
from specgen.model.system import Layer, System
from specgen.model.walk import Path
from specgen.trade.consumption import Demand
from specgen.trade.dead_volume import DeadVolume, dead_volume
from specgen.trade.given import Given
from specgen.trade.working import Working, WorkingError

_DEAD_VOLUME = {
    DeadVolumeTable.BY_ROUGHNESS: DeadVolume.BY_ROUGHNESS,
    DeadVolumeTable.BY_BAND: DeadVolume.BY_BAND,
    DeadVolumeTable.WHOLE_PROFILE: DeadVolume.WHOLE_PROFILE,
}
_BLASTING = {StepKind.BLAST, StepKind.SWEEP}

LayerKey = tuple[str, str]
PackKey = tuple[str, str | None]


@dataclass(frozen=True, slots=True)
class Unsolved:
    """A figure that cannot be worked out: where to look, and why.

    `missing`: what it needs is not stated; otherwise what is stated contradicts itself.
    """

    path: Path
    why: str
    missing: bool = False


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
                if seen.setdefault(working.id, working) != working:
                    raise ValueError(f"two figures of the job are called {working.id}")
        yield from seen.values()


def quantities(job: Job, spec: Spec) -> Quantities:
    """All figures of a job that its sources allow."""
    return _work_out(spec, job.id)


@memoised
def _work_out(spec: Spec, job_id: str) -> Quantities:
    found, job = Quantities(), spec.jobs[job_id]
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
        where = error.path if isinstance(error, FaultyValueError | NotStatedError) else path
        fault = Unsolved(where, error.what, missing=isinstance(error, NotStatedError))
        # Every layer and pack of a product meets the same fault in it; it is told once.
        if fault not in found.unsolved:
            found.unsolved.append(fault)


def _area(found: Quantities, job: Job, item: Item) -> None:
    supporting, area = item_area(item, ("jobs", job.id, "items", item.id))
    found.supporting.extend(supporting)
    if area is not None:
        found.areas[item.id] = area


def _wet(found: Quantities, system: System, layer: Layer, spec: Spec) -> None:
    solids = solids_sprayed(spec.product_of(layer), spec.variant_of(layer))
    if isinstance(solids, Working):
        found.supporting.append(solids)
    supporting, target = wet_target(system, layer, spec, solids)
    found.supporting.extend(supporting)
    if target is not None:
        found.wet_targets[system.id, layer.id] = target


def _packs(found: Quantities, job: Job, spec: Spec) -> None:
    by_pack: dict[PackKey, list[tuple[LayerKey, Demand]]] = {}
    profile = _profile(found, job)
    for system in spec.systems_of(job):
        items = [item for item in job.items if spec.system_of(job, item) is system and item.id in found.areas]
        blasted = [item for item in items if is_blasted(job, item, spec)] if profile is not None else []
        whole = _together(found, job, f"area-of.{system.id}", items)
        rough = whole if blasted == items else _together(found, job, f"blasted-area-of.{system.id}", blasted)
        for layer in system.layers:
            wanted = by_pack.setdefault((layer.product, layer.variant), [])
            film = planned_film(system, layer, spec)
            if film is not None and whole is not None:
                wanted.append(((system.id, layer.id), Demand(whole, film.given)))
            if layer is system.layers[0] and profile is not None and rough is not None:
                wanted.append(((system.id, layer.id), Demand(rough, profile)))
    for key, demands in by_pack.items():
        if demands:
            _try(found, ("products", key[0], "pack"), partial(_pack, found, job, spec, key, demands))


def _together(found: Quantities, job: Job, name: str, items: list[Item]) -> Working | None:
    """The areas of several items as one figure, so that the packs of a job with many items can still be followed."""
    areas = [found.areas[item.id] for item in items]
    try:
        return summed_area(name, areas, found.supporting) if areas else None
    except WorkingError as error:
        found.unsolved.append(Unsolved(("jobs", job.id, "items", items[0].id), error.what))
        return None


def is_blasted(job: Job, item: Item, spec: Spec) -> bool:
    """True where the preparation of the item blasts it, so that its first coat has a profile to fill."""
    preparation = spec.preparation_of(job, item)
    return preparation is not None and any(step.do in _BLASTING for step in preparation.steps)


def _profile(found: Quantities, job: Job) -> Working | None:
    """The dry film that fills the blast profile, counted once, for the first coat on it."""
    consumption = job.consumption
    if consumption is None or consumption.profile is None or consumption.dead_volume is None:
        return None
    path = ("jobs", job.id, "consumption", "profile")
    height, convention = Given(consumption.profile, ".".join(path)), _DEAD_VOLUME[consumption.dead_volume]
    try:
        filled = dead_volume(f"dead-volume.{job.id}", height, convention)
    except WorkingError as error:
        found.unsolved.append(Unsolved(path, str(error)))
        return None
    found.supporting.append(filled)
    return filled


def _pack(found: Quantities, job: Job, spec: Spec, key: PackKey, demands: list[tuple[LayerKey, Demand]]) -> None:
    product = spec.products[key[0]]
    name = ".".join(part for part in key if part)
    variant = product.variant(key[1]) if key[1] else None
    fill, loss = contents_of(product, variant), loss_on_the_way(job, product)
    solids = solids_in_can(product, variant)
    if fill is None:
        raise NotStatedError("the contents of the pack are not stated", ("products", product.id, "pack", "fill"))
    if loss is None:
        path = ("jobs", job.id, "consumption", "transfer_efficiency")
        raise NotStatedError("the transfer efficiency of the job is not stated", path)
    if solids is None:
        path = ("products", product.id, "solids", "in_can")
        raise NotStatedError("neither volume solids nor a composition is stated", path)
    if isinstance(solids, Working):
        found.supporting.append(solids)
    if isinstance(loss, Given):
        need = need_of_cans(found.supporting, product, name, fill, solids, loss)
    else:
        need = need_of_tins(found.supporting, fill, solids, loss)
    for layer_key in dict.fromkeys(at for at, _ in demands):
        of_layer = [demand for at, demand in demands if at == layer_key]
        found.layer_packs[layer_key] = need(f"layer-packs.{layer_key[0]}.{layer_key[1]}", of_layer)
    found.packs[key] = need(f"packs.{name}", [demand for _, demand in demands])
