"""Spans of time that a clause names in figures, in words or by days of the week. Called by the facts and rules that read times in words.

By days and nights a span has two ends: at its shortest from the end of one shift to the start of the other, at its longest from the
start of one to the end of the other.
"""

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import dataclass
from fractions import Fraction

from specgen.units.quantity import Quantity

_NUMBERS = {
    "a": 1,
    "an": 1,
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
    rf"(?<![\w.,])(\d+(?:\.\d+)?|{'|'.join(sorted(set(_NUMBERS) - {'an'}, key=len, reverse=True))})[ -]?(min|h|hour|day|week)(?:ute)?s?\b",
    re.I,
)
_SPELT = (
    (re.compile(r"\bhalf an hour\b", re.I), 30),
    (re.compile(r"\b(?:a )?quarter of an hour\b", re.I), 15),
    (re.compile(r"\b(?:(?:an?|one) hour and a half|one and a half hours)\b", re.I), 90),
    (
        re.compile(
            r"(?:(?<=after )|(?<=within )|(?<=for )|(?<=than )|(?<=about ))an hour\b|\ban hour(?= later| after)", re.I
        ),
        60,
    ),
)  # min
_MONTHS = re.compile(r"\b(\d+|an?|one|two|three|four|six) (month|year)s?\b", re.I)
_DAYS_IN = {"month": (28, 31), "year": (365, 366)}
_DAYS = ("monday", "tuesday", "wednesday", "thursday", "friday", "saturday", "sunday")
_DAY = re.compile(rf"\b({'|'.join(_DAYS)})s?\b", re.I)
_LISTED = re.compile(r"\s*(?:and|or|to|until|-|–|,)\s*", re.I)
_ORDINALS = ("first", "second", "third", "fourth", "fifth", "sixth", "seventh", "eighth", "ninth", "tenth")
_ON_A_DAY = re.compile(rf"\b(?:from|on|by) the ({'|'.join(_ORDINALS)}) day\b", re.I)
# what is said by nights, with the fewest and the most hours it can mean; no fewest where it can begin at once; common practice, no source
_BY_NIGHTS: tuple[tuple[re.Pattern[str], int | None, int], ...] = (
    (re.compile(r"\bovernight\b", re.I), 13, 18),
    (re.compile(r"\b(?:next|following) morning\b", re.I), 13, 24),
    (re.compile(r"\b(?:next|following) day\b|\bday after\b|\btomorrow\b", re.I), 13, 36),
    (re.compile(r"\b(?:over|after) the weekend\b", re.I), 60, 84),
    (re.compile(r"\b(?:next|following) week\b", re.I), 60, 264),
    (
        re.compile(r"\bsame (?:afternoon|evening|shift)\b|\b(?:in|within) (?:one|a single|the same) shift\b", re.I),
        None,
        12,
    ),
    (re.compile(r"\bsame day\b|\b(?:in|within) (?:one|a single) day\b", re.I), None, 16),
)
_SHORTEST_NIGHT = 13  # h


@dataclass(frozen=True, slots=True)
class Span:
    """A span in its words; no `shortest` where it may begin at once, as on the same day."""

    words: str
    shortest: Quantity | None
    longest: Quantity

    @property
    def counted(self) -> bool:
        """True where a figure or a word for one says how long."""
        return self.shortest == self.longest


def number_said(word: str) -> int | None:
    """The whole number a word or figure says; None for any other word."""
    return int(word) if word.isdigit() else _NUMBERS.get(word.lower()) if word.lower() not in {"a", "an"} else None


def spans_said(clause: str) -> Iterator[tuple[str, Quantity | None]]:
    """Each span with its words, at its shortest; None for months and years, which nobody counts in hours."""
    for span in spans_between(clause):
        if _MONTHS.fullmatch(span.words):
            yield span.words, None
        elif span.shortest is not None:
            yield span.words, span.shortest


def spans_between(clause: str) -> Iterator[Span]:
    """Each span with both its ends."""
    for match in _MONTHS.finditer(clause):
        few, many = _DAYS_IN[match[2].lower()]
        times = _NUMBERS.get(match[1].lower()) or int(match[1])
        yield Span(match[0], _hours(24 * few * times), _hours(24 * many * times))
    for spelt, minutes in _SPELT:
        for match in spelt.finditer(clause):
            exactly = Quantity.of("duration", Fraction(minutes), "min", str(minutes))
            yield Span(match[0], exactly, exactly)
        clause = spelt.sub(lambda found: " " * len(found[0]), clause)
    for match in _FIGURE.finditer(clause):
        number = _NUMBERS.get(match[1].lower())
        amount = Fraction(match[1]) if number is None else Fraction(number)
        unit = "h" if match[2].lower() == "hour" else match[2].lower()
        exactly = Quantity.of("duration", amount, unit, str(match[1] if number is None else number))
        yield Span(match[0], exactly, exactly)
    found = list(_DAY.finditer(clause))
    named = [match[1].lower() for match in found]
    # days that are listed, as Monday to Friday, are no span
    if len(named) == 2 and named[0] != named[1] and not _LISTED.fullmatch(clause[found[0].end() : found[1].start()]):
        days = (_DAYS.index(named[1]) - _DAYS.index(named[0])) % 7
        words = f"{named[0].capitalize()} to {named[1].capitalize()}"
        yield Span(words, _hours(24 * (days - 1) + _SHORTEST_NIGHT), _hours(24 * days + 12))
    for pattern, fewest, most in _BY_NIGHTS:
        for match in pattern.finditer(clause):
            yield Span(match[0], _hours(fewest) if fewest is not None else None, _hours(most))
    for match in _ON_A_DAY.finditer(clause):
        yield Span(match[0], None, _hours(24 * (_ORDINALS.index(match[1].lower()) + 1)))


def _hours(number: int) -> Quantity:
    return Quantity.of("duration", Fraction(number), "h", str(number))
