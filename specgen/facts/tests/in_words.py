"""Values of tests that a text names: number, unit and method, read only where they can mean one thing.

One scan for every rule on tests in words. A value belongs to a method where its sentence, or else what stands around the text, names
that method and the unit is one of its own; differences and losses are no values.
"""

from __future__ import annotations

import re
from collections.abc import Iterator
from fractions import Fraction
from typing import NamedTuple

from specgen.facts.tests.spoken import Spoken
from specgen.facts.tests.standards import methods_in, says, standards_in
from specgen.facts.tests.values import NUMBER, kinds_of
from specgen.model.test_value import Measured
from specgen.standards.reads import remembered
from specgen.units.kinds import KINDS, SPELLINGS

SENTENCE = re.compile(r"[;\n]|[.](?!\d)")
_NUMBER = r"\d{1,9}(?:\.\d{1,6})?"
_TO = r" ?(?:to|-|–|\.\.|and) ?"
# As texts write them, beside the spellings that a value may have.
_LOOSE = {"swings": "oscillation", "osc": "oscillation"}
_OF_GLOSS = {"gloss units": "GU", "units": "GU", "units of gloss": "GU"}
_OF_PENDULUM = {"cycles": "oscillation", "swing": "oscillation", "oscillations": "oscillation"}
_CHANGE = re.compile(
    r"\b(?:fell|falls?|fall(?:en)?|los[st]|loss(?:es)?|los(?:es|ing)|drop\w*|chang\w+|kept|keeps?|retain\w*|retention|within|differ\w*|spread|"
    r"instead|not|never|old|existing|was|were before)\b",
    re.IGNORECASE,
)
_NO_TEST_LASTS = frozenset({"month", "year"})
_PENDULUM = re.compile(r"\bpendulum|\bswings?\b", re.IGNORECASE)
# Gloss is as often written without its unit: gloss 90 to 100, gloss at 60 degrees: 85.
_BARE_GLOSS = re.compile(
    r"\bgloss(?:[ :,]{1,2}(?:of|is|at|about|level|value|from|to|above|below|least|(?:20|60|85)[ -]?(?:°|deg\w*)))*[ :,]{1,2}"
    rf"(?P<low>{_NUMBER})(?:{_TO}(?P<high>{_NUMBER}))?(?=[\s]*(?:$|[,;:.()]|at\b|measured\b|by\b|and\b|or\b|after\b|on\b))(?![.]\d)",
    re.IGNORECASE,
)
_ANGLE = re.compile(r"\b(20|60|85) ?(?:°|deg(?:rees?)?\b)|\b(20|60|85)-degree", re.IGNORECASE)
KONIG, PERSOZ, GLOSS = "pendulum_konig", "pendulum_persoz", "gloss"


class SaidValue(NamedTuple):
    """One value, or both ends of a range, of one method, with the words it stands in."""

    method: str
    values: tuple[Measured, ...]
    written: str
    sentence: str


def sentences(text: str) -> Iterator[str]:
    """A text by sentences; a decimal point ends none."""
    for part in SENTENCE.split(text):
        if part.strip():
            yield part.strip()


def said_values(place: Spoken) -> Iterator[SaidValue]:
    """Every value of a test that the place names."""
    for sentence in sentences(place.text):
        methods = _methods(sentence) or _methods(place.around)
        for method in methods:
            if not _CHANGE.search(sentence):
                yield from _of(method, sentence, methods)


def _methods(text: str) -> tuple[str, ...]:
    """The methods a text names; a pendulum whose kind is not named is taken for König's, which counts in swings."""
    found = methods_in(text)
    konig, persoz = says(text, KONIG), says(text, PERSOZ)
    if persoz is not None and konig is None:
        return tuple(method for method in found if method != KONIG)
    if konig is not None and persoz is None:
        return tuple(method for method in found if method != PERSOZ)
    if KONIG in found or _PENDULUM.search(text):
        return (*(method for method in found if method not in {KONIG, PERSOZ}), KONIG)
    return found


@remembered
def _pattern(method: str) -> re.Pattern[str]:
    units = {unit for kind in kinds_of(method) if kind != NUMBER for unit in KINDS[kind].units}
    units -= {unit for unit in units if SPELLINGS.get(unit, unit) in _NO_TEST_LASTS}
    if method == GLOSS:
        units |= set(_OF_GLOSS)
    if method in {KONIG, PERSOZ}:
        units = {unit for unit in units if SPELLINGS.get(unit, unit) == "s"} | set(_OF_PENDULUM) | set(_LOOSE)
    spelt = "|".join(re.escape(unit) for unit in sorted(units, key=len, reverse=True))
    return re.compile(rf"(?<![\w.,-])(?P<low>{_NUMBER})(?:{_TO}(?P<high>{_NUMBER}))?[ -]?(?P<unit>{spelt})(?![\w/²])")


def _of(method: str, sentence: str, methods: tuple[str, ...]) -> Iterator[SaidValue]:
    if method == GLOSS:
        for found in _BARE_GLOSS.finditer(sentence):
            yield _said(method, found, "GU", sentence)
    for found in _pattern(method).finditer(sentence):
        unit = _unit(found["unit"])
        rivals = [other for other in methods if other != method and _takes(other, unit)]
        if rivals and _nearest(sentence, found, (method, *rivals)) != method:
            continue
        yield _said(method, found, unit, sentence)


def _said(method: str, found: re.Match[str], unit: str, sentence: str) -> SaidValue:
    ends = [digits for digits in (found["low"], found["high"]) if digits]
    return SaidValue(method, tuple(Measured(Fraction(end), unit, end) for end in ends), found[0], sentence)


def _unit(written: str) -> str:
    unit = (_LOOSE | _OF_PENDULUM | _OF_GLOSS).get(written, written)
    return SPELLINGS.get(unit, unit)


def _takes(method: str, unit: str) -> bool:
    return any(kind != NUMBER and unit in KINDS[kind].units for kind in kinds_of(method))


def _nearest(sentence: str, value: re.Match[str], methods: tuple[str, ...]) -> str:
    """Of several methods that take the unit, the one named nearest to the value; a comma parts more than a word does."""

    def distance(method: str) -> int:
        word = says(sentence, method)
        spans = [word.span()] if word is not None else [(named.start, named.end) for named in standards_in(sentence)]
        return min((_between(sentence, value.span(), span) for span in spans), default=len(sentence))

    return min(methods, key=distance)


def _between(sentence: str, value: tuple[int, int], word: tuple[int, int]) -> int:
    between = sentence[word[1] : value[0]] if word[1] <= value[0] else sentence[value[1] : word[0]]
    return len(between) + len(sentence) * between.count(",")


def angle_in(text: str) -> str:
    """The angle of a gloss meter that a text names, as 60; empty where it names none or several."""
    named = angles_in(text)
    return named.pop() if len(named) == 1 else ""


def angles_in(text: str) -> set[str]:
    """Every angle of a gloss meter that a text names."""
    return {found[1] or found[2] for found in _ANGLE.finditer(text)}
