"""Sums of layer films, for the rules on totals."""

from __future__ import annotations

from fractions import Fraction

from specgen.model.system import System
from specgen.units.quantity import Quantity


def sum_of(system: System, limit: str) -> Quantity | None:
    """The sum of `min`, `nominal` or `max` over the layers, in the unit of the first; None where a layer lacks it."""
    films: list[Quantity | None] = [getattr(layer.film, limit) for layer in system.layers]
    stated = [film for film in films if film is not None]
    if not stated or len(stated) < len(films):
        return None
    unit = stated[0].unit
    return Quantity.of("thickness", sum((film.to(unit) for film in stated), Fraction(0)), unit)
