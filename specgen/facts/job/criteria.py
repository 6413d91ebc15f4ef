"""What passes at an inspection point, with the film limits in force where its criterion is as specified.

Asked by pages, cards and rules. What is under the gauge is the coat, the coats up to it, or the total; coats beneath it are sanded by
then, the last one where the point says so or the work is complete.
"""

from __future__ import annotations

from typing import NamedTuple

from specgen.facts.job.inspected import places
from specgen.facts.job.points import layers_read, once_sanded
from specgen.facts.job.stack import old_layers
from specgen.facts.layer.film import Limit, film_limit
from specgen.facts.layer.left import film_in_the_end, least_left
from specgen.facts.layer.sums import sum_of
from specgen.model.acceptance import AcceptanceRule, Criterion, Each, InspectionPoint
from specgen.model.job import Item, Job
from specgen.model.spec import Spec
from specgen.model.system import Layer, System
from specgen.units.quantity import Quantity

_LIMITS: tuple[Limit, ...] = ("min", "nominal", "max")


class Held(NamedTuple):
    """A criterion and the items it holds for; without items for all that the point inspects."""

    items: tuple[Item, ...]
    criterion: Criterion


def criteria_of(point: InspectionPoint, job: Job, spec: Spec) -> tuple[Held, ...]:
    """The criterion as stated; where it is as specified, with the limits in force, one for each film that is specified."""
    if not point.criterion.as_specified:
        return (Held((), point.criterion),)
    held: dict[tuple[str, ...], list[Item]] = {}
    criteria: dict[tuple[str, ...], Criterion] = {}
    for item, system in places(point, job, spec):
        limits = limits_in_force(point, job, item, system, spec)
        if limits:
            key = tuple(f"{name} {film}" for name, film in limits.items())
            held.setdefault(key, []).append(item)
            criteria.setdefault(key, _with(point.criterion, limits))
    if len(held) == 1:
        return (Held((), *criteria.values()),)
    return tuple(Held(tuple(items), criteria[key]) for key, items in held.items())


def criterion_of(point: InspectionPoint, system: System, job: Job, spec: Spec) -> Criterion:
    """The criterion at a point for the items with one system, the first of them where they differ."""
    if not point.criterion.as_specified:
        return point.criterion
    for item, painted in places(point, job, spec):
        if painted is system:
            return _with(point.criterion, limits_in_force(point, job, item, system, spec))
    return point.criterion


def _with(criterion: Criterion, limits: dict[Limit, Quantity]) -> Criterion:
    """What is stated beside takes precedence over what is specified; where nothing says how readings count, each has to be inside."""
    left: dict[str, object] = {name: film for name, film in limits.items() if getattr(criterion, name) is None}
    counted = criterion.rule is not None or criterion.text is not None
    by = {} if counted else {"rule": AcceptanceRule.OWN, "each": Each.READING}
    return criterion.model_copy(update=left | by)


def limits_in_force(point: InspectionPoint, job: Job, item: Item, system: System, spec: Spec) -> dict[Limit, Quantity]:
    """Minimum, nominal and maximum of the film under the gauge, as specified for the coats; what nobody states is left out."""
    layers = layers_read(point, system)
    if not layers:
        return {}
    found = {limit: _limit(point, system, layers, limit, spec) for limit in _LIMITS}
    if old := [layer.coat.thickness for layer in old_layers(job, item, spec)]:
        measured = [film for film in old if film is not None]
        for limit, film in found.items():
            if len(measured) < len(old):
                # what is not measured can only make the film thicker
                found[limit] = film if limit == "min" else None
            elif film is not None:
                found[limit] = sum_of([film, *measured])
    return {limit: film for limit, film in found.items() if film is not None}


def _limit(
    point: InspectionPoint, system: System, layers: tuple[Layer, ...], limit: Limit, spec: Spec
) -> Quantity | None:
    stated: Quantity | None = getattr(system.total, limit, None) if len(layers) == len(system.layers) else None
    if stated is not None:
        return stated
    # a point that follows no coat comes when all of them are finished
    finished = point.after is None or once_sanded(point)
    films = []
    for layer in layers:
        is_sanded = finished or layer is not layers[-1]
        films.append(_of_coat(system, layer, limit, spec, is_sanded=is_sanded))
    held = [film for film in films if film is not None]
    return sum_of(held) if len(held) == len(films) else None


def _of_coat(system: System, layer: Layer, limit: Limit, spec: Spec, *, is_sanded: bool) -> Quantity | None:
    if is_sanded and limit == "min":
        return least_left(system, layer, spec)
    if is_sanded and limit == "nominal":
        return film_in_the_end(system, layer, spec, "nominal")
    # sanding need not take off all that it may
    film = film_limit(system, layer, spec, limit)
    return film.value if film is not None else None
