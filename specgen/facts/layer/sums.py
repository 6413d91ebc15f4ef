"""Sums of layer films, for the rules on totals."""

from __future__ import annotations

from collections.abc import Sequence
from fractions import Fraction

from specgen.model.system import System
from specgen.units.quantity import Quantity
from specgen.units.rounding import round_half_up


def sum_of(system: System, limit: str) -> Quantity | None:
    """The sum of `min`, `nominal` or `max` over the layers, in the unit of the first; None where a layer lacks it."""
    films: list[Quantity | None] = [getattr(layer.film, limit) for layer in system.layers]
    stated = [film for film in films if film is not None]
    if not stated or len(stated) < len(films):
        return None
    unit = stated[0].unit
    total = sum((film.to(unit) for film in stated), Fraction(0))
    return Quantity.of("thickness", total, unit, _digits(total, stated))


def _digits(total: Fraction, films: Sequence[Quantity]) -> str:
    """The sum with the decimals of its most exact film; empty, to be rounded in print, where units or figures differ."""
    if any(film.unit != films[0].unit or not film.digits for film in films):
        return ""
    return str(round_half_up(total, max(len(film.digits.partition(".")[2]) for film in films)))
