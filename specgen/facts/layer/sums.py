"""The film of all coats together: the sum of the limits in force, or the total the system states. Asked by rules and pages."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from fractions import Fraction

from specgen.facts.layer.film import Limit, film_limit
from specgen.model.spec import Spec
from specgen.model.system import System
from specgen.units.quantity import Quantity
from specgen.units.rounding import round_half_up


@dataclass(frozen=True, slots=True)
class FilmSum:
    """A sum over all layers, with the films summed; `borrowed` are the ids of those for which a limit of the product is counted."""

    value: Quantity
    borrowed: tuple[str, ...]
    films: tuple[Quantity, ...]

    @property
    def lenders(self) -> str:
        """` (for primer, clear the limit of the product is counted)`, to be put behind the figure; empty where none is."""
        return f" (for {', '.join(self.borrowed)} the limit of the product is counted)" if self.borrowed else ""


def film_sum(system: System, spec: Spec, limit: Limit) -> FilmSum | None:
    """The sum of `min`, `nominal` or `max` in force over the layers, in the unit of the first; None where one has none."""
    films = [(layer, film_limit(system, layer, spec, limit)) for layer in system.layers]
    held = [film.value for _, film in films if film is not None]
    if not held or len(held) < len(films):
        return None
    unit = held[0].unit
    total = sum((film.to(unit) for film in held), Fraction(0))
    borrowed = tuple(layer.id for layer, film in films if film is not None and film.borrowed)
    return FilmSum(Quantity.of("thickness", total, unit, _digits(total, held)), borrowed, tuple(held))


def total_film(system: System, spec: Spec, limit: Limit) -> Quantity | None:
    """The `min`, `nominal` or `max` of all coats together: as the system states it, else the sum; None where there is neither."""
    stated: Quantity | None = getattr(system.total, limit, None)
    if stated is not None:
        return stated
    summed = film_sum(system, spec, limit)
    return summed.value if summed is not None else None


def _digits(total: Fraction, films: Sequence[Quantity]) -> str:
    """The sum with the decimals of its most exact film; empty, to be rounded in print, where units or figures differ."""
    if any(film.unit != films[0].unit or not film.digits for film in films):
        return ""
    return str(round_half_up(total, max(len(film.digits.partition(".")[2]) for film in films)))
