"""Which items of which jobs get a system or a preparation, and which coats a product: the graph seen from the parts.

Called by facts of layers and products and by rules.
"""

from __future__ import annotations

from specgen.facts.graph import Address, links_to
from specgen.facts.memo import memoised
from specgen.model.job import Item, Job
from specgen.model.preparation import Preparation
from specgen.model.product import Product
from specgen.model.spec import Spec
from specgen.model.system import Layer, System

Placed = tuple[Job, Item]


def items_painted_with(system: System, spec: Spec) -> tuple[Placed, ...]:
    """The items that get the system, in the order of the jobs."""
    return placed(spec, ("systems", system.id))


def items_prepared_with(preparation: Preparation, spec: Spec) -> tuple[Placed, ...]:
    """The items that get the preparation, in the order of the jobs."""
    return placed(spec, ("preparations", preparation.id))


def jobs_painted_with(system: System, spec: Spec) -> tuple[Job, ...]:
    """The jobs with an item that gets the system, each once."""
    return tuple({job.id: job for job, _ in items_painted_with(system, spec)}.values())


def coats_of(product: Product, spec: Spec) -> tuple[Layer, ...]:
    """The layers of the systems that are of a product, in the order of the systems."""
    return _coats(spec).get(product.id, ())


@memoised
def _coats(spec: Spec) -> dict[str, tuple[Layer, ...]]:
    found: dict[str, list[Layer]] = {}
    for system in spec.systems.values():
        for layer in system.layers:
            if layer.product is not None:
                found.setdefault(layer.product, []).append(layer)
    return {product: tuple(layers) for product, layers in found.items()}


@memoised
def placed(spec: Spec, address: Address) -> tuple[Placed, ...]:
    """The items that get the record at an address itself, in the order of the jobs."""
    found: list[Placed] = []
    for link in links_to(spec, address):
        if link.source[0] == "jobs" and link.through[0] == "items":
            job = spec.jobs[link.source[1]]
            found.extend((job, item) for item in job.items if item.id == link.through[1])
    return tuple(found)
