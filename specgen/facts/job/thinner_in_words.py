"""More thinner in a sentence than any product of the job allows. Called by the rule on limits in words."""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence
from fractions import Fraction

from specgen.facts.product.spans_said import number_said
from specgen.facts.product.thinned import solvent_free
from specgen.model.product import Product

_SHARE = re.compile(
    r"(\d+(?:\.\d+)?) ?% (?:of )?(?:\w+ )?thinner\b(?! than)|"
    r"\bthin(?:ned|s|ning)?(?! (?:film|coat|layer|spot|place|reading))(?: \w+){0,2}? "
    r"(?:(?:with|by|to) )?(?:up to |about |at most )?(\d+(?:\.\d+)?) ?%",
    re.I,
)
_MEASURE = r"(?:litres?|liters?|l|L|gallons?|gal|quarts?|pints?|parts?|measures?|cups?|mL|ml)"
_MANY = r"(half an?|an?|\d+(?:\.\d+)?|[a-z]+)"
_OF_THINNER = rf"{_MEASURE} of (?:\w+ )?thinner(?: [A-Z]\b)?"
_MIXED_IN = re.compile(
    rf"\b{_MANY} {_OF_THINNER} (?:goes )?(?:to|in|into|for|with|on) (?:every |each )?{_MANY} {_MEASURE}\b|"
    rf"\b{_MANY} {_MEASURE} of (?:\w+ ){{1,2}}(?:with|and|to) {_MANY} {_OF_THINNER}",
    re.I,
)


def too_much_thinner(clause: str, products: Sequence[Product]) -> Iterator[str]:
    """What a clause says, where every product that states its thinner allows less, or none states any and all are free of solvent."""
    mixings = [product.application.mixing for product in products if product.application is not None]
    stated = [one.thinner_max for one in mixings if one is not None and one.thinner_max is not None]
    most = max(stated, key=lambda one: one.base, default=None)
    for words, share in _shares_said(clause):
        if most is not None and share > most.number:
            yield f"'{words}'; the products allow at most {most}"
        elif most is None and share > 0 and products and all(map(solvent_free, products)):
            yield f"'{words}'; {products[0].id} is nearly free of solvent and states no thinner"


def _shares_said(clause: str) -> Iterator[tuple[str, Fraction]]:
    """Each share of thinner, in percent of the paint, with its words."""
    for match in _SHARE.finditer(clause):
        yield match[0], Fraction(match[1] or match[2])
    for match in _MIXED_IN.finditer(clause):
        thinner, paint = _number(match[1] or match[4]), _number(match[2] or match[3])
        if thinner and paint:
            yield match[0], 100 * thinner / paint


def _number(word: str) -> Fraction | None:
    if word.lower().startswith("half a"):
        return Fraction(1, 2)
    if word.lower() in {"a", "an"}:
        return Fraction(1)
    if word[0].isdigit():
        return Fraction(word)
    number = number_said(word)
    return Fraction(number) if number is not None else None
