"""Rows of work: who prepared, applied, sanded, repaired, accepted and released what, and when. Called by `assessment`."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from specgen.assessing.air import moment
from specgen.assessing.cells import Dates, given
from specgen.assessing.faults import Faults
from specgen.assessing.records import Record
from specgen.assessing.results import Did, Done
from specgen.findings import Severity

_OF_A_COAT = frozenset({Did.APPLICATION, Did.SANDING})


def work_done(records: Sequence[Record], dates: Dates, faults: Faults) -> Iterator[Done]:
    """Every row that can be used, in its order; a row that lacks its day, coat or person is told."""
    for record in records:
        did = _did(record.text("work"))
        point, item = record.text("point"), record.text("item")
        if did is None:
            what = f"{record.text('work')[:40]!r} is no work that is recorded; known are {', '.join(Did)}"
            faults.tell("RDG018", what, record.place("work"), point=point, item=item)
            continue
        on = moment(record, "on", dates, point, faults)
        lacking = [name for name, there in _needed(did, record, on is not None) if not there]
        if lacking:
            what = f"the row of {did.value} does not state {' and '.join(lacking)}"
            # without a day, or the coat, it cannot be told what came before what
            grave = did is Did.RELEASE or {"on", "coat", "item"} & {*lacking}
            weigh = Severity.ERROR if grave else Severity.WARNING
            after = did in {Did.ACCEPTANCE, Did.RELEASE}
            faults.tell(
                "RDG019",
                what,
                record.place(lacking[0]),
                point=point,
                item=item,
                weigh=weigh,
                read=bool(point) or not after,
            )
        if on is not None:
            yield Done(record=record, did=did, on=on)


def _did(text: str) -> Did | None:
    said = " ".join(text.casefold().split())
    return next((did for did in Did if did.value == said), None)


def _needed(did: Did, record: Record, on: bool) -> Iterator[tuple[str, bool]]:
    yield "on", on
    yield "by", bool(given(record.text("by")))
    if did in _OF_A_COAT:
        yield "coat", bool(record.text("coat"))
    if did is Did.REPAIR:
        yield "item", bool(record.text("item"))
        yield "remark", bool(record.text("remark"))
