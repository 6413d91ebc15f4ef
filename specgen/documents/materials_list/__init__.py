"""The materials of a job as rows for a spreadsheet: what to order, in whole packs."""

from specgen.documents.kind import Kind
from specgen.documents.materials_list.view import materials_list
from specgen.facts.requirement import names_products

KIND = Kind(
    name="materials-list",
    place=7,
    about="job",
    formats=("csv",),
    view=materials_list,
    sheet=lambda listed: listed.sheet,
    applies=names_products,
    issued=True,
)
