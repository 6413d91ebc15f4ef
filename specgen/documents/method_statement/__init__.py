"""The method statement of one job: everything a workshop needs to do it and an auditor to judge it."""

from specgen.documents.kind import Kind
from specgen.documents.method_statement.view import called, method_statement

KIND = Kind(
    name="method-statement",
    place=1,
    about="job",
    formats=("pdf", "html"),
    view=method_statement,
    apart=lambda statement: statement.apart,
    called=lambda view: called(view.open),
    issued=True,
)
