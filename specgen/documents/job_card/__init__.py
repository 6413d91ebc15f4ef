"""The job card: one side of paper that hangs at a vehicle, to be ticked, written on and signed."""

from specgen.documents.job_card.view import CUTS, job_card, too_much
from specgen.documents.kind import Kind, Sides
from specgen.facts.job.builds import builds_of

KIND = Kind(
    name="job-card",
    place=2,
    about="job",
    formats=("pdf",),
    view=job_card,
    sides=Sides(
        cuts=CUTS,
        count=lambda job, spec: len(builds_of(job, spec)),
        view=job_card,
        pages=lambda card: len(card.sides),
        too_much=too_much,
    ),
    issued=True,
    form=True,
)
