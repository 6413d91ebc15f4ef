"""Which systems and jobs a changed record reaches, gathered once a specification. Called by `compare` and by the sentences."""

from __future__ import annotations

from collections.abc import Mapping, Set

from specgen.comparison.changes import Reached
from specgen.facts.memo import memoised
from specgen.facts.placing import Placed, items_painted_with, items_prepared_with, jobs_painted_with
from specgen.model.spec import Spec


def jobs_reached(spec: Spec, records: Set[tuple[str, ...]]) -> set[str]:
    """The ids of the jobs that one of `records`, each a kind and an id, has a part in; the project is in all of them."""
    if ("project",) in {record[:1] for record in records}:
        return set(spec.jobs)
    return {job for record in records for job in jobs_with(spec, *record[:2])}


def jobs_with(spec: Spec, kind: str, key: str) -> tuple[str, ...]:
    """The ids of the jobs that a record has a part in, in the order of the jobs."""
    if kind == "jobs":
        return (key,) if key in spec.jobs else ()
    if kind == "preparations":
        found = spec.preparations.get(key)
        return tuple(dict.fromkeys(job.id for job, _ in items_prepared_with(found, spec))) if found is not None else ()
    systems = systems_with(spec, key) if kind == "products" else (key,) if key in spec.systems else ()
    return tuple(dict.fromkeys(job.id for system in systems for job in jobs_painted_with(spec.systems[system], spec)))


def reached(spec: Spec, kind: str, key: str) -> tuple[Reached, ...]:
    """The jobs a product, preparation or system has a part in; empty for what is a job's own."""
    if kind == "products":
        return tuple(Reached(spec.jobs[job].document.number, ()) for job in jobs_with(spec, kind, key))
    placed: tuple[Placed, ...] = ()
    if kind == "systems" and key in spec.systems:
        placed = items_painted_with(spec.systems[key], spec)
    elif kind == "preparations" and key in spec.preparations:
        placed = items_prepared_with(spec.preparations[key], spec)
    by_job: dict[str, list[str]] = {}
    for job, item in placed:
        by_job.setdefault(job.document.number, []).append(item.id)
    return tuple(Reached(number, tuple(items)) for number, items in by_job.items())


def systems_with(spec: Spec, product: str) -> tuple[str, ...]:
    """The ids of the systems with a layer of the product."""
    return _by_product(spec).get(product, ())


@memoised
def _by_product(spec: Spec) -> Mapping[str, tuple[str, ...]]:
    found: dict[str, dict[str, None]] = {}
    for system in spec.systems.values():
        for layer in system.layers:
            found.setdefault(layer.product, {})[system.id] = None
    return {product: tuple(systems) for product, systems in found.items()}
