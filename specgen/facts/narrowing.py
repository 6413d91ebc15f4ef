"""A specification cut down to what one document reaches. Called by approving and issuing: what is frozen, hashed and approved is this.

A job reaches its systems, preparations and products. A product's data sheet also names the products it goes over and under.
A test prints every document of the demo from the narrowed and from the whole specification and finds the same text.
"""

from __future__ import annotations

from collections.abc import Iterator

from specgen.model.job import Job
from specgen.model.product import Product
from specgen.model.spec import LIST_KINDS, Spec
from specgen.model.walk import leaves

Address = tuple[str, str]


def narrowed(spec: Spec, subject: Job | Product) -> Spec:
    """The project, the subject, and every record either of them leads to; in the order of the sources."""
    reached = set(_reached(spec, subject))
    kept = {
        kind: {key: one for key, one in getattr(spec, kind).items() if (kind, key) in reached} for kind in LIST_KINDS
    }
    return Spec(spec.project, **kept)


def _reached(spec: Spec, subject: Job | Product) -> Iterator[Address]:
    waiting = list(_begin(spec, subject))
    seen: set[Address] = set()
    while waiting:
        address = waiting.pop()
        kind, key = address
        if address in seen or key not in getattr(spec, kind):
            continue
        seen.add(address)
        yield address
        record = getattr(spec, kind)[key]
        waiting.extend((said.refers, str(value)) for _, value, said in leaves(record) if said.refers in LIST_KINDS)


def _begin(spec: Spec, subject: Job | Product) -> Iterator[Address]:
    if isinstance(subject, Job):
        yield "jobs", subject.id
        return
    yield "products", subject.id
    # windows name the coat that follows, which may be no product of the folder
    yield from (("products", window.by) for window in subject.overcoat)
    for other in spec.products.values():
        if any(window.by == subject.id for window in other.overcoat):
            yield "products", other.id
