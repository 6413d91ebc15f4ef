"""What film a specification asks for under the gauge of an inspection point: of a coat, of the coats up to it, or in total.

Asked by rules on inspection and on film.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from typing import NamedTuple

from specgen.facts.job.criteria import criterion_of
from specgen.facts.job.inspected import places
from specgen.facts.job.points import layers_read, principle_of
from specgen.facts.layer.left import removals
from specgen.facts.layer.sums import film_sum_of, least_film
from specgen.facts.placing import jobs_painted_with
from specgen.model.acceptance import AcceptanceRule, Criterion, GaugePrinciple, InspectionPoint, Stage
from specgen.model.job import Item, Job
from specgen.model.product import Role
from specgen.model.spec import Spec
from specgen.model.system import Layer, System
from specgen.units.quantity import Quantity

Ends = tuple[Quantity, Quantity]
"""A limit, from the lowest to the highest figure that is right for it: sanding lies between the two, or a total and its coats."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Asked:
    """One film that may be meant at a point; a limit is None where neither system nor product states it.

    `lent` are the limits that rest on a product's word alone for some coat.
    """

    of: str
    least: Ends | None
    nominal: Ends | None
    most: Ends | None
    lent: frozenset[str]


class Read(NamedTuple):
    """A system read at a point, and the films its criterion may speak of, the likeliest first."""

    system: System
    films: tuple[Asked, ...]


def films_read(point: InspectionPoint, job: Job, spec: Spec) -> Iterator[Read]:
    """Each system read at a point. Nothing for a comb, before the first coat, or while coats are applied."""
    if principle_of(point) is GaugePrinciple.COMB or (point.after is None and point.at is not Stage.COMPLETION):
        return
    items: dict[str, list[Item]] = {}
    systems: dict[str, System] = {}
    for item, system in places(point, job, spec):
        items.setdefault(system.id, []).append(item)
        systems[system.id] = system
    for key, system in systems.items():
        layers = layers_read(point, system)
        if layers:
            yield Read(system, tuple(_films(point, system, layers, items[key], spec)))


def _films(
    point: InspectionPoint, system: System, layers: tuple[Layer, ...], items: list[Item], spec: Spec
) -> Iterator[Asked]:
    together = _asked(system, layers, spec)
    yield together
    # an own wording may take off what was read before; a cut shows each coat by itself
    by_itself = point.criterion.rule in {None, AcceptanceRule.OWN} or principle_of(point) is GaugePrinciple.DESTRUCTIVE
    if len(layers) > 1 and by_itself:
        yield _asked(system, layers[-1:], spec)
    for item in items:
        if item.old_coats:
            yield _on_old(together, item)


def _asked(system: System, layers: tuple[Layer, ...], spec: Spec) -> Asked:
    sums = {limit: film_sum_of(system, layers, spec, limit) for limit in ("min", "nominal", "max")}
    least, nominal, most = (_ends(found.value if found is not None else None) for found in sums.values())
    left = least_film(system, layers, spec)
    if least is not None and left is not None and not left.lacking:
        least = _ends(left.value, least[0])
    if layers[-1].role is Role.BODY_FILLER:
        least = None  # it ends in a feather edge, where nothing of it is left
    taken = [film for layer in layers for film in removals(layer)]
    if taken:
        nominal, most = (
            _ends(_less(ends[0], taken), ends[0]) if ends is not None else None for ends in (nominal, most)
        )
    lent = frozenset(limit for limit, found in sums.items() if found is not None and found.borrowed)
    named = [layer.id for layer in layers]
    of = f"the coat {named[0]}" if len(named) == 1 else f"the coats {', '.join(named)} together"
    if len(layers) == len(system.layers) and system.total is not None:
        total, of = system.total, f"the total of the system {system.id}"
        # a total may ask more than its coats do, never less; a film at the limit of its coats stays right where it does not
        least = (total.min, max(total.min, *(least or (total.min,)))) if total.min is not None else least
        nominal = _ends(total.nominal, *(nominal or ())) if total.nominal is not None else nominal
        most = (min(total.max, *(most or (total.max,))), total.max) if total.max is not None else most
        lent -= {limit for limit in ("min", "nominal", "max") if getattr(total, limit) is not None}
    return Asked(of=of, least=least, nominal=nominal, most=most, lent=lent)


def _on_old(new: Asked, item: Item) -> Asked:
    """New coats on the existing ones of an item; where one of these was not measured, only the minimum can be told."""
    old = [coat.thickness for coat in item.old_coats]
    of = f"{new.of}, on the existing coats of {item.id}"
    measured = [film for film in old if film is not None]
    if len(measured) < len(old):
        return Asked(of=of, least=new.least, nominal=None, most=None, lent=new.lent)
    least, nominal, most = (
        (_more(ends[0], measured), _more(ends[1], measured)) if ends is not None else None
        for ends in (new.least, new.nominal, new.most)
    )
    return Asked(of=of, least=least, nominal=nominal, most=most, lent=new.lent)


def _ends(*films: Quantity | None) -> Ends | None:
    stated = [film for film in films if film is not None]
    return (min(stated), max(stated)) if stated else None


def _less(film: Quantity, taken: list[Quantity]) -> Quantity:
    return Quantity.of("thickness", film.number - sum(part.to(film.unit) for part in taken), film.unit)


def _more(film: Quantity, added: list[Quantity]) -> Quantity:
    return Quantity.of("thickness", film.number + sum(part.to(film.unit) for part in added), film.unit)


def criteria_on(system: System, layer: Layer, spec: Spec) -> Iterator[tuple[Job, tuple[Criterion, ...]]]:
    """Each job with the system, with the criteria of its points after a coat; at completion for the last one too."""
    last = layer is system.layers[-1]
    for job in jobs_painted_with(system, spec):
        points = [p for p in job.inspection if p.after == layer.id or (last and p.at is Stage.COMPLETION)]
        yield job, tuple(criterion_of(point, system, job, spec) for point in points)
