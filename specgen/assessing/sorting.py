"""Rows of the files by what they hold: readings of film, air, batches, work, and what a test or a person says at a point.

Ids that are none of the job are told, with the nearest. Called by `assessment`.
"""

from __future__ import annotations

import re
from collections.abc import Collection, Iterable
from difflib import get_close_matches

from specgen.assessing.air import AIR
from specgen.assessing.cells import is_word
from specgen.assessing.columns import COLUMNS
from specgen.assessing.faults import Faults
from specgen.assessing.forms import PRINTED
from specgen.assessing.records import Record, Source, columns
from specgen.assessing.surface import TESTS
from specgen.facts.job.inspected import film_points
from specgen.model.job import Job
from specgen.model.spec import Spec

_NAMES = 3
_ids = columns("point", "item", "coat", "product", "part", "test")
_NUMBER = re.compile(r"0{0,8}([1-9]\d{0,8})(?:\.0)?", re.ASCII)
_BATCH = ("batch", "product")
_BESIDE_VALUES = frozenset({*AIR, *_BATCH, "work"})
_filled = columns(*(name for name in COLUMNS if name not in PRINTED))


class Sorted:
    """Rows by what they hold; ids that are none of the job are told, with the nearest."""

    def __init__(self, job: Job, spec: Spec, film: Collection[str], faults: Faults) -> None:
        self._film_points, self._faults = film, faults
        self._points = {point.id: point for point in job.inspection}
        self._items = {item.id: item for item in job.items}
        self._coats = {layer.id for system in spec.systems_of(job) for layer in system.layers}
        self._products = {product.id for product in spec.products_of(job)}
        self._after: dict[str, list[str]] = {}
        for point in film_points(job):
            if point.id in film:
                self._after.setdefault(point.after or "", []).append(point.id)
        self.air: list[Record] = []
        self.batches: list[Record] = []
        self.work: list[Record] = []
        self._film: dict[str, list[Record]] = {}
        self._words: dict[str, list[Record]] = {}
        self._fine: set[tuple[str, ...]] = set()
        # the table of the row before, and whether it has columns of values alone, as what a gauge wrote has
        self._source: Source | None = None
        self._of_values = False

    def with_values(self, point: str, *, film: bool) -> list[Record]:
        """Rows with a value at a point: figures of film, or what a person or test says."""
        return (self._film if film else self._words).get(point, [])

    def take(self, record: Record) -> None:
        if not record.text("value") and _spare(record):
            return
        ids = _ids(record)
        # thousands of rows name the same place
        if ids not in self._fine:
            if not self._known(record):
                return
            self._fine.add(ids)
        if record.source is not self._source:
            self._source = record.source
            self._of_values = record.source.columns.keys().isdisjoint(_BESIDE_VALUES)
        if self._of_values:
            self._value(record)
            return
        of_air, of_batch = self._holds(record, AIR), self._holds(record, _BATCH)
        if of_air:
            self.air.append(record)
        of_work = self._holds(record, ("work",))
        if of_batch:
            self.batches.append(record)
        if of_work:
            self.work.append(record)
        if not (of_air or of_batch or of_work) or record.has("value"):
            self._value(record)

    def _holds(self, record: Record, names: tuple[str, ...]) -> bool:
        """True where the row itself says something in one of the columns."""
        if record.source.columns.keys().isdisjoint(names):
            return False
        return any(record.has(name) for name in names)

    def _value(self, record: Record) -> None:
        point = record.text("point") or self._point_of_coat(record)
        if not point:
            what = "the row names no inspection point"
            self._faults.tell("RDG008", what, record.place("point"), item=record.text("item"))
            return
        of_film, word = point in self._film_points, is_word(record.text("value"))
        film = of_film and not word
        if of_film and word and (record.has("spot") or record.has("reading")):
            what = f"{record.text('value')[:40]!r} stands where a reading belongs"
            self._faults.tell("RDG003", what, record.place("value"), point=point, item=record.text("item"))
            return
        if film and record.text("test"):
            what = f"the row names the test {record.text('test')[:40]!r}, and film is read at this point"
            self._faults.tell("RDG008", what, record.place("test"), point=point, item=record.text("item"))
            return
        if film and not record.text("item"):
            self._faults.tell("RDG008", "the reading names no item", record.place("item"), point=point)
            return
        (self._film if film else self._words).setdefault(point, []).append(record)

    def _point_of_coat(self, record: Record) -> str:
        points = self._after.get(record.text("coat"), []) if record.text("coat") else []
        return points[0] if len(points) == 1 else ""

    def _known(self, record: Record) -> bool:
        point, item = record.text("point"), record.text("item")
        if point and point not in self._points:
            return self._stranger("point", point, self._points, record, item=item)
        if item and item not in self._items:
            return self._stranger("item", item, self._items, record, point=point)
        if (coat := record.text("coat")) and coat not in self._coats:
            return self._stranger("coat", coat, self._coats, record, point=point, item=item)
        if (product := record.text("product")) and product not in self._products:
            return self._stranger("product", product, self._products, record, point=point, item=item)
        if (test := record.text("test")) and test not in TESTS:
            return self._stranger("test", test, TESTS, record, point=point, item=item)
        return self._part_is_there(record, point, item)

    def _part_is_there(self, record: Record, point: str, item: str) -> bool:
        part = record.text("part")
        if not part or not item:
            return True
        count = self._items[item].count
        number = _NUMBER.fullmatch(part)
        if number is None or not 1 <= int(number[1]) <= count:
            self._faults.tell(
                "RDG008",
                f"there is no part {part[:40]!r} of {item}: its parts are numbered 1 to {count}",
                record.place("part"),
                point=point,
                item=item,
            )
            return False
        return True

    def _stranger(
        self, column: str, text: str, known: Iterable[str], record: Record, *, point: str = "", item: str = ""
    ) -> bool:
        near = get_close_matches(text, list(known), n=_NAMES)
        meant = f"; nearest: {', '.join(near)}" if near else f"; there is: {', '.join(sorted(known)[:12])}"
        self._faults.tell(
            "RDG008",
            f"the {column} {text[:60]!r} is none of this job{meant}",
            record.place(column),
            point=point,
            item=item,
        )
        return False


def _spare(record: Record) -> bool:
    """True for a line of a sheet or template that was not needed: nothing was filled in, and no reading or result was planned there."""
    planned = record.text("item") and not (record.text("coat") or record.text("work"))
    return not planned and not any(_filled(record))
