"""The conformity report: which items conform, which do not, what is not decided and what to do, then every reading behind it."""

from specgen.documents.conformity_report.view import conformity_report
from specgen.documents.kind import Kind

KIND = Kind(
    name="conformity-report",
    place=11,
    about="assessment",
    formats=("pdf", "html"),
    view=conformity_report,
    record=True,
)
