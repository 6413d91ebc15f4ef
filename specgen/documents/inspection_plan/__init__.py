"""The inspection and test plan of a job: what is done, what is inspected and who takes part, in the order of the work."""

from specgen.documents.inspection_plan.view import inspection_plan
from specgen.documents.kind import Kind

KIND = Kind(
    name="inspection-plan",
    place=14,
    about="job",
    formats=("pdf", "html"),
    view=inspection_plan,
    issued=True,
)
