"""A danger as the sentence that a worker reads first. Called by the hazard card, and by the method statement for its first page."""

from __future__ import annotations

from collections.abc import Sequence

from specgen.documents.parts.caution_catalogue import HURTS, LONG_TERM
from specgen.documents.parts.wording import Words
from specgen.facts.product.dangers import Danger


def hurts(danger: Danger, codes: Sequence[str], words: Words) -> str:
    """Of long-term harm it names what the statements that are there name, and nothing else."""
    named = [words(kind) for begins, kind in LONG_TERM if any(code.startswith(tuple(begins.split())) for code in codes)]
    return words(HURTS[danger]).replace("{kinds}", f" ({', '.join(named)})" if named else "")
