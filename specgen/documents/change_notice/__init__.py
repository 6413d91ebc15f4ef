"""The change notice: what became weaker between two versions, then old and new side by side."""

from specgen.documents.change_notice.view import change_notice
from specgen.documents.kind import Kind

KIND = Kind(name="change-notice", place=10, about="comparison", formats=("pdf", "html"), view=change_notice)
