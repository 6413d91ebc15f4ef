"""The closed set of units, read once from `units.txt` as exact factors.

Called by `kinds`. Fractions all through, so that 1 mil is 25.4 um exactly and a conversion there and back loses nothing. The
definitions keep to a small part of the language of pint, which a test has read the same file; nothing here sees an author's text.
"""

from __future__ import annotations

import re
from collections.abc import Mapping
from dataclasses import dataclass, field
from fractions import Fraction
from functools import cache
from importlib import resources

# `12 inch`, `/ second ** 2`, `[length]`: a number, a unit or a dimension, multiplied unless a stroke stands before it
_FACTOR = re.compile(r"[\s*]*(?P<over>/?)\s*(?P<what>[0-9.]+|[A-Za-z]\w*|\[\w+\])(?:\s*\*\*\s*(?P<power>[0-9]+))?\s*")


@dataclass(frozen=True, slots=True)
class _Measure:
    """What one of a unit comes to in base units: a value is its number * `factor` + `offset`."""

    factor: Fraction = Fraction(1)
    dimensions: Mapping[str, int] = field(default_factory=dict)
    offset: Fraction = Fraction(0)


@cache
def known_units() -> Mapping[str, _Measure]:
    """Every unit of `units.txt` by its name and by its sign."""
    known: dict[str, _Measure] = {}
    for line in resources.files(__package__).joinpath("units.txt").read_text(encoding="utf-8").splitlines():
        stated = line.partition("#")[0].strip()
        if stated:
            name, meaning, *signs = (part.strip() for part in stated.split("="))
            expression, _, offset = meaning.partition("; offset:")
            measure = _measure(expression, known)
            if offset:
                measure = _Measure(measure.factor, measure.dimensions, _measure(offset, known).factor)
            known.update(dict.fromkeys((name, *signs), measure))
    return known


def _measure(expression: str, known: Mapping[str, _Measure]) -> _Measure:
    """Raises KeyError for a unit that is not known, ValueError for what is no expression."""
    factor, offset, dimensions, at = Fraction(1), Fraction(0), dict[str, int](), 0
    while at < len(expression):
        found = _FACTOR.match(expression, at)
        if found is None:
            raise ValueError(f"{expression!r} is no unit")
        at, what = found.end(), found["what"]
        power = int(found["power"] or 1) * (-1 if found["over"] else 1)
        one = _one(what, known)
        factor *= one.factor**power
        for name, exponent in one.dimensions.items():
            dimensions[name] = dimensions.get(name, 0) + exponent * power
        if what == expression:
            # only by itself has a temperature its zero
            offset = one.offset
    return _Measure(factor, {name: exponent for name, exponent in dimensions.items() if exponent}, offset)


def _one(what: str, known: Mapping[str, _Measure]) -> _Measure:
    if what.startswith("["):
        return _Measure(dimensions={what: 1})
    return known[what] if what[0].isalpha() else _Measure(Fraction(what))


@cache
def scale(unit: str, base: str) -> tuple[Fraction, Fraction]:
    """Factor and offset that turn a number in `unit` into one in `base`: base = number * factor + offset.

    Both are unit expressions of `units.txt`. Raises ValueError where they do not measure the same thing.
    """
    one, other = _measure(unit, known_units()), _measure(base, known_units())
    if one.dimensions != other.dimensions:
        raise ValueError(f"{unit} and {base} do not measure the same thing")
    return one.factor / other.factor, (one.offset - other.offset) / other.factor
