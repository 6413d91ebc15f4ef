"""The qualification matrix: the tests a customer requires against the reports there are, gaps first, and what to test next.

Each bidder has one of his own, so that none is told the results of another.
"""

from specgen.documents.kind import Kind
from specgen.documents.qualification_matrix.view import qualification_matrix
from specgen.facts.tests.qualification import requires_tests

KIND = Kind(
    name="qualification-matrix",
    place=12,
    about="bid",
    formats=("pdf", "html"),
    view=qualification_matrix,
    applies=lambda bid, spec: requires_tests(bid.job, spec),
    record=True,
)
