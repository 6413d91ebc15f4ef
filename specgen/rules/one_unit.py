"""One unit in one sentence, the author's. Called by `run` on every sentence of every rule.

Where a sentence measures one kind of thing in metric and in US units, what is not in the unit of the record the finding stands
in is given in that unit, with the figure as it was written in brackets: `90 um is above 88.9 um (3.5 mil)`.
"""

from __future__ import annotations

import re
from collections import Counter
from collections.abc import Iterator, Mapping, Sequence
from fractions import Fraction
from functools import cache

from specgen.model.node import Node
from specgen.model.walk import Path, leaves
from specgen.units.kinds import KINDS, SPELLINGS, UNITS
from specgen.units.quantity import Quantity, Range
from specgen.units.rounding import plain_text, significant

# an hour and a day, a gram and a kilogram stand beside each other in any sentence; these two systems do not
_AMERICAN = {"mil", "in", "ft", "ft2", "fl oz", "gal", "ft3", "oz", "lb", "lb/gal", "degF", "ft2/gal", "ft/min"} | {
    "psi",
    "ft3/min",
}
_US = frozenset(unit for unit in UNITS if SPELLINGS.get(unit, unit) in _AMERICAN)
_FINER = 5
_WARMTH = ("temperature", "temperature_difference")


def in_authors_unit(sentence: str, record: Node | None, path: Path) -> str:
    """The sentence in one unit a kind; as it is where it holds one already, or where it cannot be told which kind it measures.

    `path` is the address within the record that the finding stands at: the unit written there goes before others of the record,
    and where the record states nothing of the kind, that of the first figure of the sentence is taken.
    """
    found = [(match, _known()[match["unit"]]) for match in _mentions().finditer(sentence)]
    if record is None or len({unit in _US for _, unit in found}) < 2:
        return sentence
    units = _written(record, path, [unit for _, unit in found])
    turned = {match.start(): told for match, unit in found if (told := _turned(match, unit, found, units))}
    pieces, end = [], 0
    for match, _ in found:
        if match.start() in turned:
            pieces += [sentence[end : match.start()], turned[match.start()]]
            end = match.end()
    return "".join(pieces) + sentence[end:]


Mention = tuple[re.Match[str], str]


def _turned(match: re.Match[str], unit: str, found: list[Mention], units: Mapping[str, str]) -> str:
    """The mention in the author's unit; empty where it stands in it, or nothing of its kind is beside it in another."""
    others = {other for _, other in found if (other in _US) != (unit in _US)}
    kinds = [
        name
        for name, wanted in units.items()
        if unit in KINDS[name].units and (wanted in _US) != (unit in _US) and others & {*KINDS[name].units}
    ]
    if len(kinds) != 1:
        return ""
    kind, wanted = kinds[0], units[kinds[0]]
    beside = {other["number"] for other, _ in found}
    low, number = match["low"], match["number"]
    figures = (f"{_figure(kind, low, unit, wanted, beside)}{match['to']}" if low else "") + _figure(
        kind, number, unit, wanted, beside
    )
    # the author's unit as this sentence spells it, with sign or as written
    spelt = next((m["unit"] for m, other in found if UNITS[other].sign == UNITS[wanted].sign), wanted)
    return f"{figures}{match['blank']}{spelt} ({match[0]})"


def _figure(kind: str, number: str, unit: str, wanted: str, beside: set[str]) -> str:
    value = Quantity.of(kind, Fraction(number.replace(",", "")), unit).to(wanted)
    shown = plain_text(Fraction(significant(value)))
    # two figures that differ do not read alike
    return plain_text(Fraction(significant(value, _FINER))) if shown in beside else shown


def _written(record: Node, path: Path, said: Sequence[str]) -> dict[str, str]:
    """The unit by kind: that of the value at the path, else the one the record writes most often, else the first `said`."""
    counted: dict[str, Counter[str]] = {}
    at: dict[str, str] = {}
    for where, value in _quantities(record):
        counted.setdefault(value.kind, Counter())[value.unit] += 1
        if where == path:
            at[value.kind] = value.unit
    first = {name: unit for name, kind in KINDS.items() for unit in reversed(said) if unit in kind.units}
    units = first | {kind: units.most_common(1)[0][0] for kind, units in counted.items()} | at
    # a temperature and a difference of temperatures are written alike: the value that is judged tells which it is
    for one, other in (_WARMTH, _WARMTH[::-1]):
        if one in at:
            units.pop(other, None)
    return units


def _quantities(record: Node) -> Iterator[tuple[Path, Quantity]]:
    for path, value, _ in leaves(record):
        if isinstance(value, Quantity):
            yield path, value
        elif isinstance(value, Range):
            yield from ((path, end) for end in (value.low, value.high) if end is not None)


@cache
def _known() -> dict[str, str]:
    """Every spelling, as written or as printed, of a unit of a kind that is measured in both systems."""
    both = [kind for kind in KINDS.values() if {*kind.units} & _US and {*kind.units} - _US]
    units = [unit for kind in both for unit in kind.units]
    return {UNITS[unit].sign: unit for unit in reversed(units)} | {unit: unit for unit in units}


@cache
def _mentions() -> re.Pattern[str]:
    units = "|".join(re.escape(unit) for unit in sorted(_known(), key=len, reverse=True) if unit != "in")
    # `in` is a word as well: it is the inch at the end of a clause only
    number = r"-?\d{1,3}(?:,\d{3})+(?:\.\d+)?|-?\d+(?:\.\d+)?"
    return re.compile(
        rf"(?<![\w.(-])(?:(?P<low>{number})(?P<to>\.\.| to ))?(?P<number>{number})(?P<blank>[ \u00a0])"
        rf"(?P<unit>(?:{units})(?![\w²³/])|in(?=$|[,.;:)]| (?:is|and|to|wide|long)\b))"
    )
