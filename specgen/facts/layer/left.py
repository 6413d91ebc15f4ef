"""What sanding and polishing leave of a coat: as the system states it, else worked out. Asked by rules and pages."""

from __future__ import annotations

from fractions import Fraction

from specgen.facts.layer.film import Film, Limit, film_limit
from specgen.model.spec import Spec
from specgen.model.system import Layer, System
from specgen.trade.film import film_left
from specgen.trade.working import Working
from specgen.units.quantity import Quantity
from specgen.units.rounding import plain_text


def removals(layer: Layer) -> tuple[Quantity, ...]:
    """What sanding and polishing may take off a coat; empty where neither is stated."""
    return tuple(film for film in (layer.sanding_removes, layer.polishing_removes) if film is not None)


def left_after_removal(system: System, layer: Layer, spec: Spec, limit: Limit) -> Working | None:
    """The `min`, `nominal` or `max` in force less all that may be taken off; None without a removal or without the limit."""
    held = film_limit(system, layer, spec, limit)
    if held is None or not removals(layer):
        return None
    unit = "mil" if held.value.unit in {"mil", "mils"} else "um"
    return film_left(f"film-left-{limit}-{system.id}-{layer.id}", held.given, removals(layer), unit)


def least_left(system: System, layer: Layer, spec: Spec) -> Quantity | None:
    """The least film that must lie there in the end: what the system says must remain, else the minimum less the removal."""
    if layer.remaining_min is not None:
        return layer.remaining_min
    return film_in_the_end(system, layer, spec, "min")


def film_in_the_end(system: System, layer: Layer, spec: Spec, limit: Limit) -> Quantity | None:
    """A limit in force, less what may be taken off; never below zero."""
    left = left_after_removal(system, layer, spec, limit)
    if left is None:
        held = film_limit(system, layer, spec, limit)
        return _value(held)
    return max(exact(left), Quantity.of("thickness", Fraction(0), left.unit, "0"))


def exact(left: Working) -> Quantity:
    """The film left with every digit."""
    return Quantity.of("thickness", left.number, left.unit, plain_text(left.number))


def _value(held: Film | None) -> Quantity | None:
    return held.value if held is not None else None
