"""Record sheets of a job: a box for everything that has to be written down, as a form to fill and as rows to type.

A form cannot be the lasting kind of PDF: what is typed into it shows only as its viewer draws it. The readings are kept, not the form.
"""

from specgen.documents.kind import Kind
from specgen.documents.record_sheets.view import record_sheets, typed_sheet
from specgen.facts.requirement import names_products

KIND = Kind(
    name="record-sheets",
    place=15,
    about="job",
    formats=("pdf", "csv"),
    view=record_sheets,
    sheet=typed_sheet,
    fields=lambda sheets: sheets.hidden,
    applies=names_products,
)
