"""What the work of a record meets, by name: the materials it is done on, the kinds of paint, and the place. Called by `practices`.

A preparation or a coat meets the material of each of its parts; a job has a material only where all its parts are of it.
"""

from __future__ import annotations

from collections.abc import Iterable

from specgen.facts.job.confined import is_confined
from specgen.facts.job.exposure import environment_of
from specgen.facts.memo import memoised
from specgen.facts.pairs.families import binder_family
from specgen.facts.pairs.parts import Part, members, painted_with, parts_of, prepared_with
from specgen.facts.placing import coats_of
from specgen.facts.product.dangers import traits_of
from specgen.facts.product.heat_needed import needs_heat
from specgen.model.application import OPEN_AIR
from specgen.model.environment import EnvironmentKind
from specgen.model.job import Item, Job
from specgen.model.node import Node
from specgen.model.preparation import Preparation
from specgen.model.product import Product, Role
from specgen.model.spec import Spec
from specgen.model.system import System

_WET = {EnvironmentKind.IMMERSION, EnvironmentKind.SPLASH, EnvironmentKind.BURIED}
NAMES = frozenset(
    {
        "steel",
        "zinc",
        "aluminium",
        "stainless",
        "plastic",
        "thermoplastic",
        "wood",
        "stoved",
        "old-paint",
        "lead",
        "isocyanate",
        "epoxy",
        "oxidative",
        "burns",
        "two-pack",
        "waterborne",
        "waterborne-only",
        "zinc-rich",
        "zinc-silicate",
        "curing",
        "clearcoat",
        "aerosol",
        "confined",
        "open-air",
        "wet",
    }
)
"""Every name that a circumstance may have."""


def circumstances(record: Node, spec: Spec) -> frozenset[str]:
    """What a job, preparation, system or product meets; nothing for any other record."""
    if isinstance(record, Job):
        return _of_job(spec, record.id)
    if isinstance(record, Preparation):
        return _of_preparation(spec, record.id)
    if isinstance(record, System):
        return _of_system(spec, record.id)
    return _of_product(spec, record.id) if isinstance(record, Product) else frozenset()


@memoised
def _of_job(spec: Spec, job_id: str) -> frozenset[str]:
    job = spec.jobs[job_id]
    of_parts = [_material(part) for part in parts_of(job, spec)]
    material = frozenset[str]().union(*of_parts[:1]).intersection(*of_parts)
    return material | _place(job, job.items) | _paints(spec.paints_of(job)) | _old(job.items)


@memoised
def _of_preparation(spec: Spec, preparation_id: str) -> frozenset[str]:
    return _of_parts(prepared_with(spec.preparations[preparation_id], spec), spec)


@memoised
def _of_system(spec: Spec, system_id: str) -> frozenset[str]:
    system = spec.systems[system_id]
    return _paints(map(spec.product_of, system.layers)) | _of_parts(painted_with(system, spec), spec)


@memoised
def _of_product(spec: Spec, product_id: str) -> frozenset[str]:
    product = spec.products[product_id]
    coats = {id(layer) for layer in coats_of(product, spec)}
    systems = [one for one in spec.systems.values() if any(id(layer) in coats for layer in one.layers)]
    met = (_of_parts(painted_with(system, spec), spec) for system in systems)
    return _paint(product).union(*met)


def _of_parts(parts: Iterable[Part], spec: Spec) -> frozenset[str]:
    found = frozenset[str]()
    for part in parts:
        found |= _material(part) | _place(part.job, [part.item]) | _old([part.item])
    return found


def _material(part: Part) -> frozenset[str]:
    named = {
        "steel": part.material in members("bare_steel") or part.material == "cast_iron",
        "zinc": part.is_zinc,
        "aluminium": part.material in {"aluminium", "magnesium"},
        "stainless": part.material == "stainless",
        "plastic": part.kind == "plastic",
        "thermoplastic": part.material in {"plastic", "plastic_low_energy", "rubber"},
        "wood": part.kind == "wood",
    }
    return frozenset(name for name, holds in named.items() if holds)


def _old(items: Iterable[Item]) -> frozenset[str]:
    coats = [coat for item in items for coat in item.old_coats]
    poison = any(coat.lead or coat.chromate for coat in coats)
    return frozenset({"old-paint"} if coats else ()) | frozenset({"lead"} if poison else ())


def _place(job: Job, items: Iterable[Item]) -> frozenset[str]:
    found = [environment_of(job, item) for item in items]
    named = {
        "confined": is_confined(job),
        "open-air": job.workplace in OPEN_AIR,
        "wet": any(one is not None and one.kind in _WET for one in found),
    }
    return frozenset(name for name, holds in named.items() if holds)


def _paints(products: Iterable[Product]) -> frozenset[str]:
    each = list(map(_paint, products))
    water = {"waterborne-only"} if each and all("waterborne" in one for one in each) else set()
    return (frozenset[str]().union(*each) - {"waterborne-only"}) | water


def _paint(product: Product) -> frozenset[str]:
    cure = binder_family(product.binder)["cure"]
    named = {
        "clearcoat": Role.CLEARCOAT in product.roles,
        "waterborne-only": product.binder.endswith("_wb"),
        "waterborne": product.binder.endswith("_wb"),
        "zinc-rich": product.binder in {"zinc_inorganic", "zinc_organic", "zinc_pu"},
        "zinc-silicate": product.binder == "zinc_inorganic",
        "stoved": needs_heat(product),
        "curing": cure in {"chemical", "oxidative", "moisture", "peroxide", "released by moisture"},
    }
    return frozenset(name for name, holds in named.items() if holds) | (traits_of(product) & NAMES)
