"""Batches of paint that were used: what is expired, not stated or missing is told. Called by `assessment`."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from specgen.assessing.air import moment
from specgen.assessing.cells import CellError, Dates, number_of, says_nothing
from specgen.assessing.faults import Faults
from specgen.assessing.records import Record
from specgen.assessing.results import BatchUsed, Did, Done
from specgen.findings import Place, Severity
from specgen.model.job import Job
from specgen.model.spec import Spec


def batches_used(records: Sequence[Record], dates: Dates, faults: Faults) -> Iterator[BatchUsed]:
    for record in records:
        item = record.text("item")
        used = BatchUsed(
            record=record,
            on=moment(record, "on", dates, "", faults),
            item=item,
            coat=record.text("coat"),
            product=record.text("product"),
            batch="" if says_nothing(record.text("batch")) else record.text("batch"),
            expires=moment(record, "expires", dates, "", faults),
            cans=record.text("cans"),
        )
        if not used.batch:
            faults.tell(
                "RDG013", f"no batch of {used.product} is stated", record.place("batch"), weigh=Severity.WARNING
            )
        if used.on is not None and used.expires is not None and used.on.date() > used.expires.date():
            what = f"batch {used.batch} of {used.product} expired on {used.expires.date()} and was applied on {used.on.date()}"
            faults.tell("RDG013", what, record.place("expires"), point="", item=item)
        elif used.expires is None and used.batch:
            faults.tell(
                "RDG013",
                f"the shelf life of batch {used.batch} is not stated",
                record.place("expires"),
                weigh=Severity.WARNING,
            )
        if used.cans and not _is_count(used.cans):
            what = f"{used.cans[:40]!r} is no number of packs of batch {used.batch} of {used.product}"
            faults.tell("RDG013", what, record.place("cans"), weigh=Severity.WARNING)
        yield used


def tell_expired(batches: Sequence[BatchUsed], work: Sequence[Done], faults: Faults) -> None:
    """Batches whose shelf life had ended when work on their coat began, whatever day stands in their own row."""
    for used in batches:
        rows = (one for one in work if one.did is Did.APPLICATION and one.record.text("coat") == used.coat)
        began = min(
            (one.on for one in rows if "" in (of := {one.record.text("item"), used.item}) or len(of) == 1), default=None
        )
        if began is None or used.expires is None or began.date() <= used.expires.date():
            continue
        if used.on is not None and used.on.date() > used.expires.date():
            continue  # told of its row
        what = f"batch {used.batch} of {used.product} expired on {used.expires.date()} and its coat was begun on {began.date()}"
        faults.tell("RDG013", what, used.record.place("expires"), item=used.item)


def _is_count(text: str) -> bool:
    """`7`, `2,5` or `7 cans`; none of it is no use of a batch."""
    try:
        return number_of(text)[0] > 0
    except CellError:
        return False


def tell_missing(job: Job, spec: Spec, batches: Sequence[BatchUsed], records: Sequence[Record], faults: Faults) -> None:
    """One warning for the products without a batch, where anything is recorded at all."""
    if not records:
        return
    recorded = {used.product for used in batches if used.batch}
    lacking = [product.id for product in spec.products_of(job) if product.id not in recorded]
    if lacking:
        place = Place(records[0].source.file, 1, 1, 1)
        faults.tell("RDG013", f"no batch is recorded of: {', '.join(lacking)}", place, weigh=Severity.WARNING)
