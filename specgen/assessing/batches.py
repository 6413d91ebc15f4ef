"""Batches of paint that were used: what is expired, not stated or missing is told. Called by `assessment`."""

from __future__ import annotations

from collections.abc import Iterator, Sequence, Set

from specgen.assessing.air import moment
from specgen.assessing.cells import CellError, Dates, given, number_of
from specgen.assessing.faults import Faults
from specgen.assessing.records import Record
from specgen.assessing.results import BatchUsed, Did, Done
from specgen.findings import Place, Severity
from specgen.model.job import Job
from specgen.model.spec import Spec


def batches_used(records: Sequence[Record], job: Job, spec: Spec, dates: Dates, faults: Faults) -> Iterator[BatchUsed]:
    """Every row of a batch, in its order; what it says of coat and product alone follows from the other where it can be one only."""
    for record in records:
        item = record.text("item")
        coat, product = _coat_and_product(record, job, spec)
        used = BatchUsed(
            record=record,
            on=moment(record, "on", dates, "", faults),
            item=item,
            coat=coat,
            product=product,
            batch=given(record.text("batch")),
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


def _coat_and_product(record: Record, job: Job, spec: Spec) -> tuple[str, str]:
    item, coat, product = (record.text(name) for name in ("item", "coat", "product"))
    systems = (spec.system_of(job, one) for one in job.items if item in {"", one.id})
    layers = [layer for system in systems if system is not None for layer in system.layers]
    if not coat:
        coat = _only({layer.id for layer in layers if product and layer.product == product})
    elif not product:
        product = _only({layer.product or "" for layer in layers if layer.id == coat})
    return coat, product


def _only(found: Set[str]) -> str:
    return next(iter(found)) if len(found) == 1 else ""


def tell_expired(batches: Sequence[BatchUsed], work: Sequence[Done], faults: Faults) -> None:
    """Batches whose shelf life had ended when work on their coat began, whatever day stands in their own row."""
    for used in batches:
        rows = (one for one in work if one.did is Did.APPLICATION and one.coat == used.coat)
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
