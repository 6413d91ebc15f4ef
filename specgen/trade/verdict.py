"""What an inspection comes to: conforming, conforming under a concession, not conforming, or not decided.

What is conceded is outside its limit as specified and is told apart, wherever it stands. What is missing or cannot be read leaves a thing
not decided; it is never a pass. Called by `film_acceptance` and by whoever judges readings and results of tests.
"""

from __future__ import annotations

from collections.abc import Iterable
from enum import StrEnum

from specgen.units.locale import N_


class Verdict(StrEnum):
    """The value is the wording that is printed."""

    CONFORMING = N_("conforming")
    CONCEDED = N_("conforming under concession")
    NOT_CONFORMING = N_("not conforming")
    NOT_DECIDED = N_("not decided")


_GRAVEST = (Verdict.NOT_CONFORMING, Verdict.NOT_DECIDED, Verdict.CONCEDED, Verdict.CONFORMING)
ACCEPTED = frozenset({Verdict.CONFORMING, Verdict.CONCEDED})


def together(verdicts: Iterable[Verdict]) -> Verdict:
    """One that does not conform decides, then one that is not decided, then one conceded; of nothing at all nothing is decided."""
    found = set(verdicts)
    return next((verdict for verdict in _GRAVEST if verdict in found), Verdict.NOT_DECIDED)
