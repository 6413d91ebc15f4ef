"""All products of a folder side by side on one page."""

from specgen.documents.kind import Kind
from specgen.documents.range_overview.view import range_overview

KIND = Kind(name="range-overview", place=6, about="folder", formats=("pdf", "html"), view=range_overview)
