"""The film that a sentence accepts. Called by the rule that holds the words of a criterion against its figures.

Read clause by clause; a clause on the zinc, the existing coating, the wet film or the metal is not one on the film that is accepted,
nor is a text on the difference of two readings.
"""

from __future__ import annotations

import re

from specgen.facts.job.in_words import bounds
from specgen.facts.texts import CLAUSE
from specgen.units.quantity import Quantity

_OTHER = re.compile(
    r"zinc|exist|old\b|works finish|before|\bwet\b|profile|edge|radius|taken off|deduct|remov|sanded|scratch|step\b|gap|differ|within|"
    r"of each other|correction|apart|wide|from (?:the )?(?:edge|weld)",
    re.I,
)
_DIFFERENCE = re.compile(r"deduct|subtract|taken off|minus|\bless the\b|difference", re.I)
_READ = (
    r"\b(?:no|none|not one|never)(?: single| one)?(?: readings?| spots?| values?| places?| points?| measurements?)?"
    r"(?: is| are| lies?| may be)?"
)
_NONE_BELOW = re.compile(rf"{_READ} (?:below|under|less than|thinner than)\b|\bnothing (?:below|under)\b", re.I)
_NONE_ABOVE = re.compile(rf"{_READ} (?:above|over|more than|beyond|thicker than)\b|\bnothing (?:above|over)\b", re.I)
_NONE_OUTSIDE = re.compile(rf"{_READ} (?:outside|out of)(?: of)?\b|\bnothing outside(?: of)?\b", re.I)


def film_said(text: str) -> tuple[list[Quantity], list[Quantity]]:
    """The least films and the most films that a text accepts, one of each a clause."""
    if _DIFFERENCE.search(text):
        return [], []
    least: list[Quantity] = []
    most: list[Quantity] = []
    for clause in CLAUSE.split(text):
        if _OTHER.search(clause):
            continue
        plain = _NONE_BELOW.sub("at least", _NONE_ABOVE.sub("at most", _NONE_OUTSIDE.sub("", clause)))
        said = bounds(plain, "thickness")
        if said is not None:
            least += [said.low] if said.low is not None else []
            most += [said.high] if said.high is not None else []
    return least, most
