"""A specification cut down to what one document rests on. Called by approving, issuing and comparing: what is frozen, hashed and
approved is this.

A test prints every document of the demo from the part and from the whole specification and finds the same text.
"""

from __future__ import annotations

from specgen.facts.graph import document_closure
from specgen.findings import Severity
from specgen.model.job import Job
from specgen.model.parse import Loaded
from specgen.model.product import Product
from specgen.model.spec import LIST_KINDS, Spec


def cut_to_closure(spec: Spec, subject: Job | Product, *, granted: bool = False) -> Spec:
    """The project, the subject, and every record either of them leads to; in the order of the sources.

    `granted`: with the concessions of a job, on which its as-built record rests and no other document.
    """
    within = set(document_closure(spec, ("jobs" if isinstance(subject, Job) else "products", subject.id)))
    if granted:
        within |= {("concessions", one.id) for one in spec.concessions.values() if one.job == subject.id}
    parts = {
        kind: {key: one for key, one in getattr(spec, kind).items() if (kind, key) in within} for kind in LIST_KINDS
    }
    return Spec(spec.project, **parts, pictures=spec.pictures)


def loaded_closure(loaded: Loaded, spec: Spec, subject: Job | Product, *, granted: bool = False) -> Loaded:
    """The like of what was read, with the places of what is left, to be judged by itself. `spec` is that of `loaded`."""
    part = cut_to_closure(spec, subject, granted=granted)
    within = {("project",), *((kind, key) for kind in LIST_KINDS for key in getattr(part, kind))}
    # of what is cut away nothing is told, but a file that could not be read may hold some of what is left
    unread = [found for found in loaded.findings if found.severity is Severity.ERROR and not found.path]
    places = {path: places for path, places in loaded.places.items() if path in within}
    ids = {kind: frozenset(getattr(part, kind)) for kind in LIST_KINDS}
    bases = {path: based for path, based in loaded.bases.items() if path in within}
    return Loaded(part, part, findings=unread, places=places, ids=ids, bases=bases)
