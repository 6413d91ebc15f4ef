"""Who is named by the records, held against the people of the folder. Called by `assessment`."""

from __future__ import annotations

from collections.abc import Sequence

from specgen.assessing.cells import Dates, day_read
from specgen.assessing.faults import Faults
from specgen.assessing.records import Record, columns
from specgen.register.people import People

_NAMING = ("by", "dropped_by")
_texts = columns(*_NAMING, "on")


def tell_people(records: Sequence[Record], people: People, dates: Dates, faults: Faults) -> None:
    """Persons that are not listed, and qualifications that had ended by the day of the record; each once."""
    if not people.there:
        return
    seen: set[tuple[str, ...]] = set()
    told: set[tuple[str, str]] = set()
    for record in records:
        texts = _texts(record)
        # thousands of rows name the same
        if texts in seen:
            continue
        seen.add(texts)
        for column, text in zip(_NAMING, texts[:-1], strict=True):
            if not text or (column, text) in told:
                continue
            found = people.of(text)
            if found is None:
                told.add((column, text))
                what = f"{text[:60]!r} is nobody of people.yaml"
                place, point, work = record.place(column), record.text("point"), record.text("work")
                faults.tell("RDG020", what, place, point=point, item=record.text("item"), read=bool(point) or not work)
                continue
            day = day_read(texts[-1], dates)
            for ended in found.ended(day.date()) if day is not None else ():
                if (found.id, ended.id) not in told:
                    told.add((found.id, ended.id))
                    what = f"{ended.what} of {found.id} had ended on {ended.until}, before {texts[-1]}"
                    faults.tell("RDG022", what, record.place(column))
