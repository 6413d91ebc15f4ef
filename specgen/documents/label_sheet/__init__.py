"""The label elements of one product: what stands on its label, why, in which order, and what is left out."""

from specgen.documents.kind import Kind
from specgen.documents.label_sheet.view import label_sheet

KIND = Kind(name="label-sheet", place=5, about="product", formats=("pdf", "html"), view=label_sheet)
