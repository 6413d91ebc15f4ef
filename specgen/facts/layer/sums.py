"""The film of all coats together: the sum of the limits in force, or the total the system states. Asked by rules and pages."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from fractions import Fraction
from typing import NamedTuple

from specgen.facts.layer.film import Limit, film_limit
from specgen.facts.layer.left import film_in_the_end, least_left, removals
from specgen.model.spec import Spec
from specgen.model.system import Layer, System
from specgen.units.quantity import Quantity
from specgen.units.rounding import round_half_up


class FilmSum(NamedTuple):
    """A sum over layers, with the films summed.

    `borrowed` are the ids of those for which a limit of the product is counted, `lacking` of those that have none, so that the sum
    is of the others.
    """

    value: Quantity
    borrowed: tuple[str, ...]
    films: tuple[Quantity, ...]
    lacking: tuple[str, ...] = ()

    @property
    def lenders(self) -> str:
        """` (for primer, clear the limit of the product is counted)`, to be put behind the figure; empty where none is."""
        said = [f"for {', '.join(self.borrowed)} the limit of the product is counted"] if self.borrowed else []
        said += [f"{', '.join(self.lacking)} not counted"] if self.lacking else []
        return f" ({'; '.join(said)})" if said else ""


def film_sum(system: System, spec: Spec, limit: Limit) -> FilmSum | None:
    """The sum of `min`, `nominal` or `max` in force over the layers, as applied; None where one has none."""
    return film_sum_of(system, system.layers, spec, limit)


def film_sum_of(system: System, layers: Sequence[Layer], spec: Spec, limit: Limit) -> FilmSum | None:
    """The same of some layers, in the unit of the first."""
    films = [(layer, film_limit(system, layer, spec, limit)) for layer in layers]
    held = [film.value for _, film in films if film is not None]
    if not held or len(held) < len(films):
        return None
    return FilmSum(
        sum_of(held), tuple(layer.id for layer, film in films if film is not None and film.borrowed), tuple(held)
    )


def least_film(system: System, layers: Sequence[Layer], spec: Spec) -> FilmSum | None:
    """The film that layers have at least when all is sanded and polished, counted of those that have a minimum; None where none has.

    Where some have none it is still a lower bound: a coat is never thinner than nothing.
    """
    lefts = [(layer, least_left(system, layer, spec)) for layer in layers]
    held = [left for _, left in lefts if left is not None]
    if not held:
        return None
    lent = tuple(layer.id for layer, left in lefts if left is not None and _lent(system, layer, spec))
    return FilmSum(sum_of(held), lent, tuple(held), tuple(layer.id for layer, left in lefts if left is None))


def nominal_in_the_end(system: System, spec: Spec) -> Quantity | None:
    """The nominal film of all coats when all is sanded and polished; None where nothing is taken off or a coat has no nominal."""
    if not any(removals(layer) for layer in system.layers):
        return None
    films = [film_in_the_end(system, layer, spec, "nominal") for layer in system.layers]
    held = [film for film in films if film is not None]
    return sum_of(held) if len(held) == len(films) else None


def total_film(system: System, spec: Spec, limit: Limit) -> Quantity | None:
    """The `min`, `nominal` or `max` of all coats together: as the system states it, else the sum; None where there is neither."""
    stated: Quantity | None = getattr(system.total, limit, None)
    if stated is not None:
        return stated
    summed = film_sum(system, spec, limit)
    return summed.value if summed is not None else None


def _lent(system: System, layer: Layer, spec: Spec) -> bool:
    held = film_limit(system, layer, spec, "min")
    return layer.remaining_min is None and held is not None and held.borrowed


def sum_of(films: Sequence[Quantity]) -> Quantity:
    """The sum of at least one film, in the unit of the first."""
    unit = films[0].unit
    total = sum((film.to(unit) for film in films), Fraction(0))
    return Quantity.of("thickness", total, unit, _digits(total, films))


def _digits(total: Fraction, films: Sequence[Quantity]) -> str:
    """The sum with the decimals of its most exact film; empty, to be rounded in print, where units or figures differ."""
    if any(film.unit != films[0].unit or not film.digits for film in films):
        return ""
    return str(round_half_up(total, max(len(film.digits.partition(".")[2]) for film in films)))


def family_maximums(system: System, spec: Spec, family: str) -> Iterator[tuple[tuple[Layer, ...], Quantity]]:
    """The maximum in force of each layer of a family, then that of all of them together where there are several."""
    layers = tuple(layer for layer in system.layers if spec.product_of(layer).binder == family)
    for group in (*((layer,) for layer in layers), *([layers] if len(layers) > 1 else [])):
        summed = film_sum_of(system, group, spec, "max")
        if summed is not None:
            yield group, summed.value
