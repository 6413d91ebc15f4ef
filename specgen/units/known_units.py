"""The closed set of units, read once from `units.txt` by pint, as exact factors.

Called by `kinds`. pint works with fractions here, so that 1 mil is 25.4 um exactly and a conversion there and back loses nothing.
Its expression parser never sees an author's text: it reads only the unit expressions written in `kinds`.
"""

from __future__ import annotations

from fractions import Fraction
from functools import cache
from importlib import resources

import pint


@cache
def registry() -> pint.UnitRegistry[Fraction]:
    """The registry of our own units and nothing else."""
    known: pint.UnitRegistry[Fraction] = pint.UnitRegistry(
        None, non_int_type=Fraction, autoconvert_offset_to_baseunit=True, cache_folder=None
    )
    known.load_definitions(str(resources.files(__package__).joinpath("units.txt")))
    return known


@cache
def scale(unit: str, base: str) -> tuple[Fraction, Fraction]:
    """Factor and offset that turn a number in `unit` into one in `base`: base = number * factor + offset.

    Both are unit expressions of `units.txt`. Raises pint.DimensionalityError where they do not measure the same thing.
    """
    known = registry()
    at_zero, at_one = (Fraction(known.Quantity(Fraction(n), unit).to(base).magnitude) for n in (0, 1))
    return at_one - at_zero, at_zero
