"""How many warnings are open on what a document rests on, and on nothing else of its folder. Called by the method statement."""

from __future__ import annotations

from specgen.documents.context import Context
from specgen.facts.graph import document_closure
from specgen.findings import Severity
from specgen.model.job import Job


def open_warnings(job: Job, context: Context) -> int:
    """Warnings on the project, the job and every record it leads to; of a folder cut down to those beforehand all of them."""
    if not context.findings:
        return context.open_warnings
    reached = {*(".".join(address) for address in document_closure(context.spec, ("jobs", job.id)))}
    told = (found for found in context.findings if found.severity is Severity.WARNING)
    return sum(
        1 for found in told if ".".join(found.path.split(".")[:2]) in reached or found.path.startswith("project")
    )
