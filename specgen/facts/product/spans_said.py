"""Spans of time that a clause names in figures, in words or by days of the week. Called by the rules on how long mixed paint is kept.

By days and nights the span is the shortest it can be: from the end of one shift to the start of the other.
"""

from __future__ import annotations

import re
from collections.abc import Iterator
from fractions import Fraction

from specgen.units.quantity import Quantity

_NUMBERS = {
    "a": 1,
    "one": 1,
    "two": 2,
    "three": 3,
    "four": 4,
    "five": 5,
    "six": 6,
    "seven": 7,
    "eight": 8,
    "nine": 9,
    "ten": 10,
    "eleven": 11,
    "twelve": 12,
    "fourteen": 14,
    "fifteen": 15,
    "sixteen": 16,
    "eighteen": 18,
    "twenty": 20,
    "twenty-four": 24,
    "thirty": 30,
    "thirty-six": 36,
    "forty": 40,
    "forty-eight": 48,
    "seventy-two": 72,
    "ninety": 90,
}
_FIGURE = re.compile(
    rf"(?<![\w.,])(\d+(?:\.\d+)?|{'|'.join(sorted(_NUMBERS, key=len, reverse=True))})[ -]?(min|h|hour|day|week)(?:ute)?s?\b",
    re.I,
)
_MONTHS = re.compile(r"\b(?:\d+|a|one|two|three|four|six) (?:months?|years?)\b", re.I)
_DAYS = ("monday", "tuesday", "wednesday", "thursday", "friday", "saturday", "sunday")
_DAY = re.compile(rf"\b({'|'.join(_DAYS)})s?\b", re.I)
_LISTED = re.compile(r"\s*(?:and|or|to|until|-|–|,)\s*", re.I)
_NIGHT = re.compile(r"\bovernight\b|\b(?:next|following) (?:day|morning)\b|\bday after\b|\btomorrow\b", re.I)
_WEEKEND = re.compile(r"\b(?:over|after) the weekend\b|\bnext week\b|\bfollowing week\b", re.I)
_SHORTEST_NIGHT, _SHORTEST_WEEKEND = 13, 60  # h


def number_said(word: str) -> int | None:
    """The whole number a word or figure says; None for any other word."""
    return int(word) if word.isdigit() else _NUMBERS.get(word.lower()) if word.lower() != "a" else None


def spans_said(clause: str) -> Iterator[tuple[str, Quantity | None]]:
    """Each span with its words; months and years have no figure."""
    for match in _MONTHS.finditer(clause):
        yield match[0], None
    for match in _FIGURE.finditer(clause):
        number = _NUMBERS.get(match[1].lower())
        amount = Fraction(match[1]) if number is None else Fraction(number)
        unit = "h" if match[2].lower() == "hour" else match[2].lower()
        yield match[0], Quantity.of("duration", amount, unit, str(match[1] if number is None else number))
    found = list(_DAY.finditer(clause))
    named = [match[1].lower() for match in found]
    # days that are listed, as Monday to Friday, are no span
    if len(named) == 2 and named[0] != named[1] and not _LISTED.fullmatch(clause[found[0].end() : found[1].start()]):
        days = (_DAYS.index(named[1]) - _DAYS.index(named[0])) % 7
        yield f"{named[0].capitalize()} to {named[1].capitalize()}", _hours(24 * (days - 1) + _SHORTEST_NIGHT)
    for pattern, hours in ((_NIGHT, _SHORTEST_NIGHT), (_WEEKEND, _SHORTEST_WEEKEND)):
        for match in pattern.finditer(clause):
            yield match[0], _hours(hours)


def _hours(number: int) -> Quantity:
    return Quantity.of("duration", Fraction(number), "h", str(number))
