"""What a classification by figures comes to: a category with its reasons.

The classifier and the current safety data sheet decide; nothing here classifies a product. Called by `aerosol`,
`mixture` and `acute_toxicity`, and by the rules on hazards.
"""

from __future__ import annotations

from typing import NamedTuple

from specgen.standards.citations import Citation
from specgen.trade.working import Working


class Classified(NamedTuple):
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
