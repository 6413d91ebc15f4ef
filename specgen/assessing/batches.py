"""Batches of paint that were used: what is expired, not stated or missing is told. Called by `assessment`."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from specgen.assessing.air import moment
from specgen.assessing.cells import Dates
from specgen.assessing.faults import Faults
from specgen.assessing.records import Record
from specgen.assessing.results import BatchUsed
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
            batch=record.text("batch"),
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
        yield used


def tell_missing(job: Job, spec: Spec, batches: Sequence[BatchUsed], records: Sequence[Record], faults: Faults) -> None:
    """One warning for the products without a batch, where anything is recorded at all."""
    if not records:
        return
    recorded = {used.product for used in batches if used.batch}
    lacking = [product.id for product in spec.products_of(job) if product.id not in recorded]
    if lacking:
        place = Place(records[0].source.file, 1, 1, 1)
        faults.tell("RDG013", f"no batch is recorded of: {', '.join(lacking)}", place, weigh=Severity.WARNING)
