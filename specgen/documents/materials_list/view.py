"""The materials of a job as rows for a spreadsheet: what to order, in whole packs. Called by `specgen.printing`."""

from __future__ import annotations

from dataclasses import dataclass

from specgen.documents.context import Context
from specgen.documents.parts.packs import order_line
from specgen.documents.parts.supplies import supplies
from specgen.documents.parts.tables import Column, TableView
from specgen.facts.job.quantities import quantities
from specgen.model.job import Job


@dataclass(frozen=True, slots=True, kw_only=True)
class MaterialsList:
    """The whole document. The count of packs has no unit, so that a sheet can add it up."""

    number: str
    title: str
    sheet: TableView


def materials_list(job: Job, context: Context) -> MaterialsList:
    """The view of a job that checks without errors, one row a product and variant in the order of use."""
    words = context.words.for_a_sheet()
    columns = (
        Column(words("Order number")),
        Column(words("Product")),
        Column(words("Variant")),
        Column(words("Colour")),
        Column(words("Pack")),
        Column(words("Shelf life, unopened")),
        Column(words("Packs required")),
        Column(words("Amount")),
        Column(words("Use")),
    )
    title, rows = words("Packs for the job, rounded up to whole packs"), []
    for (product, variant), needed in quantities(job, context.spec).packs.items():
        listed = context.spec.products[product]
        life = words.phrase(listed.shelf_life) or words("not stated")
        plain = (text.replace("\N{NO-BREAK SPACE}", " ") for text in (*order_line(listed, variant, words), life))
        rows.append((*plain, str(needed.rounded), "", ""))
    # no count of packs, so that the column can still be added up
    for line in supplies(job, context.spec, words):
        amount = line.amount(words).replace("\N{NO-BREAK SPACE}", " ")
        rows.append((line.order_number, line.what, "", "", "", "", "", amount, line.use))
    sheet = TableView(caption=title, columns=columns, rows=tuple(rows))
    return MaterialsList(number=job.document.number, title=title, sheet=sheet)
