"""The record sheets of a job as finished text. The template `record_sheets/document.html.j2` prints the form, `typed_sheet` is the CSV."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from specgen.assessing.columns import COLUMNS
from specgen.assessing.forms import aside_name, state_of
from specgen.documents.context import Context
from specgen.documents.parts.job_revision import revision_said
from specgen.documents.parts.parties import party
from specgen.documents.parts.tables import Column, TableView
from specgen.documents.record_sheets.lines import Rows, SheetTable
from specgen.documents.record_sheets.rows import tables
from specgen.model.job import Job


@dataclass(frozen=True, slots=True, kw_only=True)
class RecordSheets:
    """`hidden` are the fields nobody fills: what each row is about, the job, the sheet and the state of the job it was made from.

    `parties` are (party, field): who worked and who inspected, which no source names.
    """

    number: str
    title: str
    maker: str
    customer: str
    on: str
    vehicles: str
    revision: str
    state: str
    back_to: str
    parties: tuple[tuple[str, str], ...]
    tables: tuple[SheetTable, ...]
    hidden: Mapping[str, str]
    typed: tuple[tuple[str, ...], ...]
    program: str


def record_sheets(job: Job, context: Context) -> RecordSheets:
    """The view of a job that checks without errors."""
    rows, words = Rows(), context.words
    listed = tuple(tables(job, context.spec, rows, words, context.day))
    about = {"form_job": job.id, "form_sheet": job.document.number, "form_state": state_of(job)}
    return RecordSheets(
        number=job.document.number,
        title=job.document.title,
        maker=party(context.spec.project.maker).name,
        customer=party(context.spec.project.customer).name,
        on=context.day.isoformat(),
        vehicles=", ".join(job.vehicles),
        revision=revision_said(job.document.number, context),
        state=state_of(job),
        back_to=job.document.owner or party(context.spec.project.maker).name,
        parties=tuple(
            (name, aside_name("party", number))
            for number, name in enumerate((words("Contractor"), words("Quality assurance"), words("Third party")), 1)
        ),
        tables=listed,
        hidden=about | rows.hidden,
        typed=tuple(rows.typed()),
        program=context.program,
    )


def typed_sheet(view: RecordSheets) -> TableView:
    """The rows for those who type, under the names of the columns of a file of readings."""
    return TableView(caption="", columns=tuple(Column(column) for column in COLUMNS), rows=view.typed)
