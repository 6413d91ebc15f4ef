"""A card set on one side of paper: cut by the priorities of its view, or set smaller, until it fits.

Called by `document_kinds`.

How much room a text takes is known only once it is set, so cuts are tried on the paper itself, the mildest
first: most cards fit with one of the first three.
"""

from __future__ import annotations

from bisect import bisect_left
from collections.abc import Callable, Sequence
from typing import TypeVar

from specgen.documents.job_card.card_side import CardSide, Cut
from specgen.documents.job_card.view import CUTS, JobCard
from specgen.model.job import Job
from specgen.rendering.failure import RenderError, TooLongError
from specgen.units.locale import counted

AnyCut = TypeVar("AnyCut")

View = Callable[[Sequence[Cut | None], Sequence[str]], JobCard]
"""From a cut for each build (None leaves it out) and the vehicles to the card."""


def fitted(job: Job, builds: int, view: View, write: Callable[[JobCard], bytes], paper: str) -> bytes:
    """The PDF of all vehicles, each build on one side of its own, cut no more than that build needs.

    `write` raises TooLongError where a card takes more pages than it has sides. Raises RenderError where not even the
    last cut of a build fits.
    """
    # The sides of a build differ by their fleet number only, so the longest is tried before all are set.
    trial = (max(job.vehicles, key=len),) if job.vehicles else ()
    least = [_mildest(at, builds, view, write, trial) for at in range(builds)]
    # a build that no cut fits by itself fits with no other either, however the others are cut
    for more in range(0 if len(CUTS) in least else len(CUTS) - min(least, default=0)):
        try:
            return write(view([CUTS[min(cut + more, len(CUTS) - 1)] for cut in least], job.vehicles))
        except TooLongError:
            # another fleet number is set wider than the longest one
            continue
    fullest = max(view([CUTS[-1]] * builds, trial).sides, key=lambda page: len(page.side.coats))
    raise RenderError(_too_much(job, fullest.side, paper))


def mildest_cut(cuts: Sequence[AnyCut], write: Callable[[AnyCut], bytes], what: str, paper: str) -> bytes:
    """The PDF with the mildest of `cuts` that stays on one side, for a card that has one side only.

    `write` raises TooLongError where it does not. Raises RenderError where not even the last cut does.
    """
    for cut in cuts:
        try:
            return write(cut)
        except TooLongError:
            continue
    raise RenderError(
        f"{what} does not fit on one side of {paper}, not even cut as far as it may be. "
        "Shorten protection and first aid of its products, or divide the work into two jobs."
    )


def _mildest(at: int, builds: int, view: View, write: Callable[[JobCard], bytes], trial: Sequence[str]) -> int:
    """The place in CUTS of the mildest cut with which a build fits by itself; their number where none does."""

    def fits(cut: Cut) -> bool:
        try:
            write(view([cut if build == at else None for build in range(builds)], trial))
        except TooLongError:
            return False
        return True

    # Each cut leaves less on the side than the one before it, so halving finds the first that fits.
    return bisect_left(CUTS, True, key=fits)


def _too_much(job: Job, side: CardSide, paper: str) -> str:
    checks = sum(len(coat.checks) for coat in side.coats)
    checks += len(side.at_first + side.prepared + side.applying + side.finished)
    coats, steps = len(side.coats), len(side.steps)
    return (
        f"The job card of the job {job.id} does not fit on one side of {paper}: {coats} {counted('coat', 'coats', coats)}, "
        f"{steps} {counted('step', 'steps', steps)} of preparation and {checks} {counted('hold point', 'hold points', checks)}. "
        "What stands overleaf is not read at the vehicle; divide the work into two jobs, or keep fewer hold points."
    )
