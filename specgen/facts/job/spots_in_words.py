"""How many spots a part has by the words of a point: `5 spots per door, 3 per small part, 3 readings per spot`. Called by `spots`."""

from __future__ import annotations

import re
from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from itertools import product

from specgen.model.acceptance import InspectionPoint
from specgen.model.job import Item

_SPOTS = re.compile(
    r"(?P<many>\d{1,3})(?: (?:spots?|points?|places?|measurements?))? (?:per|on (?:each|every|the)) (?P<what>[^\d,;.]+)",
    re.I,
)
_READINGS = re.compile(r"(?P<many>\d{1,2}) (?:gauge )?readings\b", re.I)
# what is no part of an item: a count of these says nothing of one part
_NO_PART = re.compile(r"\b(?:area|spot|point|vehicle|job|coat|batch|shift|day|hour|m2|m²|metre|square)s?\b", re.I)
_MOST_WAYS = 10_000


@dataclass(frozen=True, slots=True)
class SpotsInWords:
    """Spots on each part of an item, by its id, and whether that is certain: else at least as many as any reading of the words asks."""

    of: Mapping[str, int]
    certain: bool


_SAME = re.compile(r"\bsame (?:spots|points|places|panels)\b", re.I)


def same_spots(point: InspectionPoint) -> bool:
    """True for a point that is read where the one before it was."""
    return _SAME.search(point.frequency or "") is not None


def readings_in_words(point: InspectionPoint) -> int | None:
    """Readings at a spot; None where the words name none, or several numbers of them."""
    found = {int(match["many"]) for match in _READINGS.finditer(point.frequency or "")}
    return found.pop() if len(found) == 1 and 0 not in found else None


def spots_in_words(point: InspectionPoint, items: Sequence[Item], together: int | None) -> SpotsInWords | None:
    """None where the words state no spots per part. `together` are the spots the plan states for all `items`, which have to add up.

    An item has the number whose words name it; of several ways that add up, none is certain.
    """
    counts = {
        " ".join(match["what"].split()): int(match["many"])
        for match in _SPOTS.finditer(point.frequency or "")
        if not _NO_PART.search(match["what"])
    }
    if not counts or not items:
        return None
    named = {item.id: _named(item, counts) for item in items}
    ways = [
        dict(zip(named, way, strict=True))
        for way in (product(*named.values()) if _ways(named) <= _MOST_WAYS else ())
        if together is None or sum(many * item.count for many, item in zip(way, items, strict=True)) == together
    ]
    if len(ways) == 1:
        return SpotsInWords(ways[0], certain=True)
    return None if together is not None else SpotsInWords({id: max(of) for id, of in named.items()}, certain=False)


def _named(item: Item, counts: Mapping[str, int]) -> tuple[int, ...]:
    """The numbers an item may have: that of the words that name it, else all of them."""
    called = f"{item.id} {item.name}".lower()
    found = {
        many for what, many in counts.items() if any(_said(one, called) for one in re.split(r" (?:or|and) ", what))
    }
    return tuple(found if len(found) == 1 else sorted(set(counts.values())))


def _said(what: str, called: str) -> bool:
    """True where the name of an item holds what is counted: `door` is in `Cab door, left`."""
    word = (
        what.lower().removesuffix("es") if what.lower().endswith(("ches", "shes")) else what.lower().removesuffix("s")
    )
    return re.search(rf"\b{re.escape(word)}", called) is not None


def _ways(named: Mapping[str, tuple[int, ...]]) -> int:
    ways = 1
    for of in named.values():
        ways *= len(of)
    return ways
