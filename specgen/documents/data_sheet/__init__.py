"""The data sheet of one product: what a painter has to know of it, in the order he asks."""

from specgen.documents.data_sheet.view import data_sheet
from specgen.documents.kind import Kind

KIND = Kind(
    name="data-sheet",
    place=4,
    about="product",
    formats=("pdf", "html"),
    view=data_sheet,
    apart=lambda sheet: sheet.apart,
    issued=True,
)
