"""The closed set of units, read from `units.txt` by pint, as exact factors.

Called by `kinds`. pint works with fractions here, so that 1 mil is 25.4 um exactly and a conversion there and back loses nothing.
Its expression parser never sees an author's text: it reads only the unit expressions written in `kinds`. What it makes of those
is kept in `factors.txt`, which a test holds to it, for loading pint takes longer than checking a folder; it is asked for the rest.
"""

from __future__ import annotations

from fractions import Fraction
from functools import cache
from importlib import resources
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    import pint

Scale = tuple[Fraction, Fraction]
"""Factor and offset that turn a number in one unit into one in another: base = number * factor + offset."""


@cache
def scale(unit: str, base: str) -> Scale:
    """From `unit` to `base`, both unit expressions of `units.txt`.

    Raises pint.DimensionalityError where they do not measure the same thing.
    """
    kept = _kept().get((unit, base))
    return kept if kept is not None else worked_out(unit, base)


def worked_out(unit: str, base: str) -> Scale:
    """What pint says of them."""
    known = registry()
    at_zero, at_one = (Fraction(known.Quantity(Fraction(n), unit).to(base).magnitude) for n in (0, 1))
    return at_one - at_zero, at_zero


@cache
def registry() -> pint.UnitRegistry[Fraction]:
    """The registry of our own units and nothing else."""
    import pint

    known: pint.UnitRegistry[Fraction] = pint.UnitRegistry(
        None, non_int_type=Fraction, autoconvert_offset_to_baseunit=True, cache_folder=None
    )
    known.load_definitions(str(resources.files(__package__).joinpath("units.txt")))
    return known


@cache
def _kept() -> dict[tuple[str, str], Scale]:
    lines = resources.files(__package__).joinpath("factors.txt").read_text("utf-8").splitlines()
    rows = (line.split() for line in lines if not line.startswith("#"))
    return {(unit, base): (Fraction(factor), Fraction(offset)) for unit, base, factor, offset in rows}
