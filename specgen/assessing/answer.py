"""What one row says of a point. Made by `looked_at` and `surface`, taken by the verdict on an item."""

from __future__ import annotations

from dataclasses import dataclass

from specgen.assessing.records import Record
from specgen.model.concession import Concession
from specgen.trade.verdict import Verdict


@dataclass(frozen=True, slots=True)
class Answer:
    """What one row says of a point: a verdict and why, and by whom; `word` is the row where it is a person's word, `under` what it is
    conceded by."""

    verdict: Verdict
    why: str = ""
    by: str = ""
    word: Record | None = None
    under: Concession | None = None
