"""A card set on one side of paper: cut by the priorities of its kind, or set smaller, until it fits. Called by `files`.

How much room a text takes is known only once it is set, so cuts are tried on the paper itself, the mildest
first: most cards fit with one of the first three.
"""

from __future__ import annotations

from collections.abc import Callable, Sequence
from typing import Any

from specgen.documents.context import Context
from specgen.documents.kind import Kind, Sides, View
from specgen.model.job import Job
from specgen.rendering.failure import RenderError, TooLongError


def fitted(
    kind: Kind[Any, Any], sides: Sides[Any, Any], job: Job, context: Context, write: Callable[[View], bytes]
) -> bytes:
    """The PDF of a card, each of its parts on one side of its own and cut no more than that part needs.

    `write` raises TooLongError where a card takes more pages than it has sides. Raises RenderError where not even the
    last cut of a part fits.
    """
    parts, last = sides.count(job, context.spec), len(sides.cuts) - 1
    tried: dict[View, bytes | None] = {}

    def set_with(cuts: Sequence[int | None], *, trial: bool = False) -> bytes | None:
        card = sides.view(job, context, [sides.cuts[cut] if cut is not None else None for cut in cuts], trial)
        if card not in tried:
            try:
                tried[card] = write(card)
            except TooLongError:
                tried[card] = None
        return tried[card]

    def mildest(part: int) -> int | None:
        """The first cut with which a part fits by itself; None where it fits with none."""
        alone = ([cut if at == part else None for at in range(parts)] for cut in range(last + 1))
        return next((cut for cut, cuts in enumerate(alone) if set_with(cuts, trial=True) is not None), None)

    least = [cut for part in range(parts) if (cut := mildest(part)) is not None]
    # a part that no cut fits by itself fits with no other either, however the others are cut
    for more in range(last + 1 - min(least, default=0) if len(least) == parts else 0):
        # what fits in a trial may not on the whole: another name is set wider than the longest one
        if (page := set_with([min(cut + more, last) for cut in least])) is not None:
            return page
    why = sides.too_much(sides.view(job, context, [sides.cuts[last]] * parts, True))
    paper = context.spec.project.page_size.value
    raise RenderError(f"The {kind.title} of the job {job.id} does not fit on one side of {paper}{why}")
