"""The job card: hangs at a vehicle, to be worked by, ticked, written on and signed; the work in front, the records behind."""

from specgen.documents.job_card.view import halves, job_card
from specgen.documents.kind import Kind
from specgen.facts.requirement import names_products

KIND = Kind(
    name="job-card",
    place=2,
    about="job",
    formats=("pdf", "html"),
    view=job_card,
    applies=names_products,
    issued=True,
    halves=halves,
)
