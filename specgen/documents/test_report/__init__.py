"""A test report as it is held in the sources: panels with their films, results, photographs, and a statement of conformity."""

from specgen.documents.kind import Kind
from specgen.documents.test_report.view import test_report

KIND = Kind(name="test-report", place=13, about="report", formats=("pdf", "html"), view=test_report, record=True)
