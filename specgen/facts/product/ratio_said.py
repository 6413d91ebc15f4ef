"""The mixing ratio that a clause names in figures or in words, base to hardener. Called by the facts that hold words against a product."""

from __future__ import annotations

import re
from fractions import Fraction

from specgen.facts.product.spans_said import number_said

_RATIO = re.compile(r"(?<![\w.:])(\d+(?:\.\d+)?) ?: ?(\d+(?:\.\d+)?)(?![\w:]|\.\d)")
_NUMBER = r"(\d+(?:\.\d+)?|[a-z]+)"
_PART = r"(?: by (?:volume|mass|weight))?(?: of)?(?: the)?((?: (?!to\b|with\b|and\b|on\b|into\b)[\w-]+){0,2}?)"
_PARTS = re.compile(
    rf"\b{_NUMBER} parts?{_PART},? (?:to|with|and|on|into|is mixed with|are mixed with) {_NUMBER}(?: parts?)?{_PART}(?=\W*$|,| by\b| in\b)",
    re.I,
)
_EQUAL = re.compile(r"\b(?:in|of) equal (?:parts|volumes|amounts|shares)\b|\bhalf and half\b", re.I)
_TO = re.compile(r"\b(\d+|[a-z]+)[ -]to[ -](\d+|[a-z]+)\b(?= by (?:volume|mass|weight)\b| ratio\b|\W*$)", re.I)
_HARDENER = re.compile(r"\b(?:harden\w*|component B|activator|curing agent|B)\b")
_HARDENER_FIRST = re.compile(r"\bharden\w* to (?:the )?base\b", re.I)


def ratio_said(clause: str) -> tuple[str, Fraction] | None:
    """The words and the share of base to hardener; None where the clause names no ratio, or one of nothing."""
    if (equal := _EQUAL.search(clause)) is not None:
        return equal[0], Fraction(1)
    parts = _PARTS.search(clause)
    found = _RATIO.search(clause) or parts or _in_words(clause)
    if found is None:
        return None
    first, second = (_number(found[place]) for place in ((1, 3) if found is parts else (1, 2)))
    if not first or not second:
        return None
    hardener_first = (
        _HARDENER.search(found[2]) is not None if found is parts else _HARDENER_FIRST.search(clause) is not None
    )
    return found[0].strip(), second / first if hardener_first else first / second


def _in_words(clause: str) -> re.Match[str] | None:
    return next((found for found in _TO.finditer(clause) if number_said(found[1]) and number_said(found[2])), None)


def _number(word: str) -> Fraction | None:
    if word[0].isdigit():
        return Fraction(word)
    number = number_said(word)
    return Fraction(number) if number is not None else None
