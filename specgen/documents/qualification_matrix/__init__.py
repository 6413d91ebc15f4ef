"""The qualification matrix: the tests a customer requires against the reports there are, gaps first, and what to test next."""

from specgen.documents.kind import Kind
from specgen.documents.qualification_matrix.view import qualification_matrix
from specgen.facts.tests.qualification import requires_tests

KIND = Kind(
    name="qualification-matrix",
    place=12,
    about="job",
    formats=("pdf", "html"),
    view=qualification_matrix,
    applies=requires_tests,
    record=True,
)
