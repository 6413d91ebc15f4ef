"""A job card set on one side of paper: cut by the priorities of its view until it fits. Called by `document_kinds`.

How much room a text takes is known only once it is set, so cuts are tried on the paper itself, the mildest first.
"""

from __future__ import annotations

from collections.abc import Callable, Sequence

from specgen.model.job import Job
from specgen.rendering.failure import RenderError, TooLongError
from specgen.views.card_side import Cut
from specgen.views.job_card import CUTS, JobCard


def fitted(
    job: Job, view: Callable[[Cut, Sequence[str]], JobCard], write: Callable[[JobCard], bytes], paper: str
) -> bytes:
    """The PDF of all vehicles, each build on one side, all cut alike.

    `write` raises TooLongError where a card takes more pages than it has sides. Raises RenderError where not even the
    last cut fits.
    """
    vehicles = job.vehicles
    # The sides of a job differ by their fleet number only, so the longest is tried before all are set.
    trial = (max(vehicles, key=len),) if vehicles else ()
    for cut in CUTS:
        try:
            card = write(view(cut, trial))
            return card if len(vehicles) < 2 else write(view(cut, vehicles))
        except TooLongError:
            continue
    raise RenderError(_too_much(job, view(CUTS[-1], trial), paper))


def _too_much(job: Job, card: JobCard, paper: str) -> str:
    side = max((page.side for page in card.sides), key=lambda side: len(side.coats))
    checks = sum(len(coat.checks) for coat in side.coats) + len(side.at_first + side.prepared + side.applying)
    return (
        f"The job card of the job {job.id} does not fit on one side of {paper}: {len(side.coats)} coats, "
        f"{len(side.steps)} steps of preparation and {checks + len(side.finished)} hold points. "
        "A card that goes on overleaf is read by half; divide the work into two jobs, or keep fewer hold points."
    )
