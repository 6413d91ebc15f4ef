"""Faults that can occur with the products and parts of a job, where they come from, and what is done about them.

Causes are those of the table of mechanisms where it has one. Called by `method_statement`.
"""

from __future__ import annotations

from dataclasses import dataclass

from specgen.documents.parts.source_marks import Marks, listed, mark
from specgen.documents.parts.tables import Column, TableView, table_view
from specgen.documents.parts.wording import Words
from specgen.facts.job.faults import possible_faults
from specgen.facts.pairs.overcoat import mechanism
from specgen.model.job import Job
from specgen.model.spec import Spec
from specgen.standards.tables import Row, table


@dataclass(frozen=True, slots=True)
class FaultsView:
    """The table; `sources` are (mark in the table, on whose word). A row without a mark is common practice."""

    table: TableView
    sources: tuple[tuple[str, str], ...]


def faults(job: Job, spec: Spec, words: Words) -> FaultsView:
    """One row a fault, in the order of the table; those that the products and parts of the job cannot have are left out."""
    columns = (
        Column(words("Defect"), "w-20"),
        Column(words("Cause"), "w-30"),
        Column(words("Remedy")),
        Column(words("Src"), "w-5"),
    )
    marks: Marks = {}
    rows = [_row(row, marks, words) for row in possible_faults(job, spec)]
    return FaultsView(table_view(words("Coating defects and remedies"), columns, rows), listed(marks))


def _row(row: Row, marks: Marks, words: Words) -> tuple[str, str, str, str]:
    if not row["mechanism"]:
        return words(row["fault"]), words(row["cause"]) or "–", words(row["remedy"]), ""
    why = mechanism(row["mechanism"])
    source = words(str(table("mechanisms").row_citation(why)))
    text = words(why["text"])
    return words(row["fault"]), text[:1].upper() + text[1:], words(row["remedy"]), mark(source, marks)
