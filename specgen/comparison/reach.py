"""Which jobs a changed record reaches, as a change tells it. Called by `compare` and by figures."""

from __future__ import annotations

from collections.abc import Set

from specgen.comparison.changes import Reached
from specgen.facts.graph import PROJECT, address_of, jobs_in, reach
from specgen.facts.placing import placed
from specgen.model.spec import Spec


def jobs_reached(spec: Spec, records: Set[tuple[str, ...]]) -> set[str]:
    """The ids of the jobs that rest on one of `records`, each the path of a record or of something in it."""
    return {job for address in {address_of(path) for path in records} for job in jobs_in(spec, reach(spec, address))}


def reached(spec: Spec, path: tuple[str, ...]) -> tuple[Reached, ...]:
    """The jobs that rest on the product, preparation or system a path stands in, each with the items that get it; empty for
    what is a job's or the project's own."""
    address = address_of(path)
    if address == PROJECT or address[0] == "jobs":
        return ()
    items: dict[str, list[str]] = {}
    for job, item in placed(spec, address):
        items.setdefault(job.id, []).append(item.id)
    return tuple(
        Reached(spec.jobs[job].document.number, tuple(items.get(job, ())))
        for job in jobs_in(spec, reach(spec, address))
    )
