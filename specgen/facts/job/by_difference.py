"""The film of one coat as a point asks for it by difference: what is read there, less what was read of the coats before.

Read from the words of a criterion, and only where they can mean one thing. Called by whoever assesses readings.
"""

from __future__ import annotations

import re
from collections.abc import Collection
from dataclasses import dataclass

from specgen.facts.job.in_words import bounds
from specgen.facts.job.inspected import film_points, places
from specgen.facts.job.points import layers_read, once_sanded
from specgen.facts.layer.left import removals
from specgen.model.acceptance import InspectionPoint
from specgen.model.job import Item, Job
from specgen.model.spec import Spec
from specgen.model.system import Layer, System
from specgen.units.quantity import Range

_TEXT = re.compile(
    r"(?:no (?:spot|reading|point|place)s? outside (?:the|its|their) limits[;,.] *)?"
    r"after (?:deducting|subtracting) (?P<less>[^,;]+), (?P<asked>[^;]+?)\.?",
    re.I,
)
_NO_COAT = re.compile(r"zinc|galvani|exist|\bold\b|works finish|profile|correction|\bvalue", re.I)
_ASKED = re.compile(
    r"(?P<all>no|every|each) (?P<what>[a-z][a-z -]*?)"
    r"(?: (?P<how>(?:not )?(?:below|above)|under|over|outside|at least|at most|up to|from|between|(?:(?:no|not) )?(?:less|more) than))?"
    r" (?P<figures>\d[^;,]*)",
    re.I,
)
_AT_LEAST = {
    "no": {"below", "under", "less than"},
    "every": {"at least", "not below", "no less than", "not less than"},
}
_AT_MOST = {
    "no": {"above", "over", "more than"},
    "every": {"at most", "up to", "not above", "no more than", "not more than"},
}
_BETWEEN = {"no": {"outside"}, "every": {"", "from", "between"}}
# `15 µm or more`, of every place alone: of none it would say the opposite
_ONE_END = re.compile(r"[\d.]+ ?\S+ (?:or more|or less|minimum|maximum|min\.?|max\.?)", re.I)
_PLACES = {"spot", "reading", "point", "place", "measurement", "spot measurement", "value"}


@dataclass(frozen=True, slots=True)
class ByDifference:
    """The last coat under a point may have a film of `asked`, which is its reading less that of the point `before` at the same
    spot. `sanded`: the coat below is sanded after it was read there, so that less of it is left than was read."""

    before: InspectionPoint
    layer: Layer
    asked: Range
    sanded: bool


def by_difference(
    point: InspectionPoint, item: Item, system: System, job: Job, spec: Spec, read: Collection[str]
) -> ByDifference | None:
    """None where the criterion asks for no difference, or one that cannot be told; `read` are the points whose figures are kept."""
    layers = layers_read(point, system)
    found = _TEXT.fullmatch(" ".join((point.criterion.text or "").split()))
    if found is None or len(layers) < 2 or _NO_COAT.search(found["less"]):
        return None
    asked = _asked(found["asked"], layers[-1])
    befores = [
        one
        for one in film_points(job)
        if one.id in read
        and layers_read(one, system) == layers[:-1]
        and any(place.id == item.id for place, _ in places(one, job, spec))
    ]
    if asked is None or not befores:
        return None
    before = befores[-1]
    return ByDifference(before, layers[-1], asked, sanded=bool(removals(layers[-2])) and not once_sanded(before))


def _asked(text: str, layer: Layer) -> Range | None:
    """`no topcoat below 52 µm`, `every spot 38 to 60 µm`: a range of the coat, or of every place."""
    found = _ASKED.fullmatch(text)
    if found is None:
        return None
    what = " ".join(found["what"].lower().split())
    if what not in _PLACES | {layer.role.value, layer.role.value.replace("-", " "), layer.id}:
        return None
    all_of = "no" if found["all"].lower() == "no" else "every"
    how, figures = (found["how"] or "").lower(), found["figures"]
    if how in _AT_LEAST[all_of]:
        return bounds(f"at least {figures}", "thickness")
    if how in _AT_MOST[all_of]:
        return bounds(f"at most {figures}", "thickness")
    if how not in _BETWEEN[all_of]:
        return None
    said = bounds(figures, "thickness")
    of_one_end = not how and _ONE_END.fullmatch(figures) is not None
    return said if said is not None and (of_one_end or None not in (said.low, said.high)) else None
