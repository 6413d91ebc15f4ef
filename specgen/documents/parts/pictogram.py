"""The pictograms of a product as drawings with their names. Called by the views on hazards."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass

from specgen.documents.parts.caution_catalogue import PICTOGRAMS
from specgen.documents.parts.wording import Words
from specgen.figures.pictograms import CODES, pictogram


@dataclass(frozen=True, slots=True, kw_only=True)
class PictogramView:
    """`drawing` is SVG, or empty for a code there is no pictogram of; `name` is what the drawing shows."""

    code: str
    name: str
    drawing: str


def pictograms(codes: Iterable[str], words: Words) -> tuple[PictogramView, ...]:
    """One entry a code, each once, in the order of the codes."""
    return tuple(_view(code, words) for code in sorted(set(codes)))


def _view(code: str, words: Words) -> PictogramView:
    if code not in CODES:
        return PictogramView(code=code, name=code, drawing="")
    name = f"{words(PICTOGRAMS[code])} ({code})"
    return PictogramView(code=code, name=name, drawing=pictogram(code, name))
