"""What a classification by figures comes to: a category with its reasons, or that it cannot be judged.

A missing figure is never a pass: `CannotJudge` is a result of its own that a rule turns into a note. The classifier and
the current safety data sheet decide; nothing here classifies a product. Called by `aerosol`, `mixture`, `labelling`,
`emissions` and `ventilation`, and by the rules on hazards.
"""

from __future__ import annotations

from dataclasses import dataclass

from specgen.standards.citations import Citation
from specgen.trade.working import Working


@dataclass(frozen=True, slots=True)
class Classified:
    """A category of a hazard class (an id of the table hazard_classes) as it follows from figures.

    `statement` tells two entries of one category apart (H335 and H336). A rule may refuse a document only where
    `source.basis.confirmed` holds; else it warns at most.
    """

    hazard_class: str
    category: str
    why: str
    workings: tuple[Working, ...]
    source: Citation
    statement: str = ""


@dataclass(frozen=True, slots=True)
class CannotJudge:
    """No result: `why` says what stands in the way, `missing` names each thing that would have to be known."""

    what: str
    why: str
    missing: tuple[str, ...] = ()
    workings: tuple[Working, ...] = ()
    source: Citation | None = None
