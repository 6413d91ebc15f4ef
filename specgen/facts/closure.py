"""A specification cut down to what one document rests on. Called by approving and issuing: what is frozen, hashed and approved is this.

A test prints every document of the demo from the part and from the whole specification and finds the same text.
"""

from __future__ import annotations

from specgen.facts.graph import document_closure
from specgen.model.job import Job
from specgen.model.product import Product
from specgen.model.spec import LIST_KINDS, Spec


def cut_to_closure(spec: Spec, subject: Job | Product) -> Spec:
    """The project, the subject, and every record either of them leads to; in the order of the sources."""
    within = document_closure(spec, ("jobs" if isinstance(subject, Job) else "products", subject.id))
    parts = {
        kind: {key: one for key, one in getattr(spec, kind).items() if (kind, key) in within} for kind in LIST_KINDS
    }
    return Spec(spec.project, **parts)
