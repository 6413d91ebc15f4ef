"""The warnings that are open on what a document rests on, and on nothing else of its folder. Called by the method statement."""

from __future__ import annotations

from specgen.documents.context import Context
from specgen.documents.parts.place_words import place_in_words
from specgen.documents.parts.tables import Column, TableView, table_view
from specgen.facts.graph import document_closure
from specgen.findings import Severity
from specgen.model.job import Job
from specgen.rules.titles import title_of


def open_warnings(job: Job, context: Context) -> TableView:
    """Warnings on the project, the job and every record it leads to: each by the rule and the place, for a finding's own words may
    tell what is the manufacturer's alone."""
    words = context.words
    reached = {*(".".join(address) for address in document_closure(context.spec, ("jobs", job.id)))}
    rows = [
        (found.id, title_of(found.id), place_in_words(found.path, context.spec, words))
        for found in context.findings
        if found.severity is Severity.WARNING
        and (found.path.startswith("project") or ".".join(found.path.split(".")[:2]) in reached)
    ]
    columns = (Column(words("Rule"), "w-10"), Column(words("Requirement"), "w-40"), Column(words("Place")))
    return table_view(words("Check warnings open at the time of printing"), columns, list(dict.fromkeys(rows)))
