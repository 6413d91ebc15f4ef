"""Where a batch of paint went, by the records of the jobs of a folder: the question of a recall. Called by `where-used`.

Records are the files that the folder keeps (`kept`), and those of as-built records that were issued. What cannot be read or belongs to
no job is told, and so is a job that records no batch, or none of a product on an item: silence about it is no proof that it has none.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping, Sequence, Set
from dataclasses import dataclass
from pathlib import Path

from specgen.assessing.cells import given
from specgen.assessing.faults import Faults
from specgen.assessing.kept import HEADINGS, columns_in, headings, job_of, kept_files
from specgen.assessing.readings import Asked, File, records_of
from specgen.assessing.records import Record, columns
from specgen.model.job import Job
from specgen.model.spec import Spec
from specgen.register.failure import RegisterError
from specgen.register.folder import read_kept
from specgen.register.frozen import thawed
from specgen.register.history import History, Kept
from specgen.register.names import MAKER_MODEL, READINGS
from specgen.register.record import Record as IssueRecord
from specgen.register.state import issues, standing

_used = columns("item", "coat", "product")


@dataclass(frozen=True, slots=True)
class BatchUse:
    """A row that names the batch, and the job whose record it stands in."""

    job: Job
    record: Record


@dataclass(frozen=True, slots=True)
class IssuedUse:
    """An as-built record that names the batch: document and revision, how the revision stands, the job as it was then, and the ids of
    the items whose rows name it."""

    issue: IssueRecord
    stands: str
    job: Job
    items: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class Gap:
    """A product, or a coat whose product is not chosen, of which a job records no batch on some of its items."""

    job: str
    product: str
    items: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class Recall:
    """Where the batch is recorded, every batch that is, jobs that record none, what other jobs leave out, and what could not be read,
    in a sentence each. Where the records say of which product the batch is, what is left out is of that product alone."""

    uses: tuple[BatchUse, ...]
    batches: tuple[str, ...]
    unrecorded: tuple[str, ...]
    gaps: tuple[Gap, ...]
    unread: tuple[str, ...]


def recall(batch: str, folder: Path, spec: Spec) -> Recall:
    """What the records of a folder say of a batch; capitals and blanks in its number do not count."""
    uses: list[BatchUse] = []
    batches: dict[str, str] = {}
    recorded: dict[str, list[Record]] = {}
    unread: list[str] = []
    mapped, _ = columns_in(headings(folder), unread)
    for file in kept_files(folder, unread):
        job = job_of(file, spec)
        name = f"{READINGS}/{file.name}"
        if job is None:
            unread.append(f"{name} is not called by a job of this folder")
            continue
        faults = Faults()
        for record in _records(file, name, job, mapped, faults):
            number = given(record.text("batch"))
            if not number:
                continue
            recorded.setdefault(job.id, []).append(record)
            batches.setdefault(_folded(number), number)
            if _folded(number) == _folded(batch):
                uses.append(BatchUse(job, record))
        unread.extend(f"{fault.place}: {fault.what}" for fault in faults)
    of = {product for use in uses if (product := use.record.text("product"))}
    gaps = [gap for job in spec.jobs.values() for gap in _gaps(job, spec, recorded.get(job.id, ()), of)]
    return Recall(
        uses=tuple(uses),
        batches=tuple(batches.values()),
        unrecorded=tuple(dict.fromkeys(gap.job for gap in gaps if gap.job not in recorded)),
        gaps=tuple(gap for gap in gaps if gap.job in recorded),
        unread=tuple(unread),
    )


def _gaps(job: Job, spec: Spec, records: Sequence[Record], of: Set[str]) -> Iterator[Gap]:
    """The items without a batch, by product; `of` are the products asked for, all of them where it is empty."""
    rows = [_used(record) for record in records]
    lacking: dict[str, dict[str, None]] = {}
    for item in job.items:
        system = spec.system_of(job, item)
        for layer in system.layers if system is not None else ():
            asked = not of or layer.product is None or layer.product in of
            if asked and not any(
                where in {"", item.id}
                and coat in {"", layer.id}
                and product in {"", layer.product}
                and (coat or product)
                for where, coat, product in rows
            ):
                lacking.setdefault(layer.product or layer.id, {})[item.id] = None
    for product, items in lacking.items():
        yield Gap(job.id, product, tuple(items))


def recall_issued(batch: str, found: Iterable[History], unread: list[str]) -> Iterator[IssuedUse]:
    """The issued as-built records that name the batch, superseded and withdrawn revisions too: what was done stays done.

    `unread` takes what could not be read, and chains that do not hold, in a sentence each.
    """
    for history in found:
        unread.extend(f"the register is damaged: {fault}" for fault in history.faults)
        for kept in issues(history.kept) if not history.faults else ():
            if kept.record.about != "records" or not (rows := list(_issued_rows(batch, kept, unread))):
                continue
            record = kept.record
            try:
                spec = thawed(read_kept(kept, MAKER_MODEL), f"{record.document}@{record.revision}").spec
            except RegisterError as reason:
                unread.append(str(reason))
                continue
            assert spec is not None  # noqa: S101  # what cannot be read back is refused
            job = spec.jobs[record.subject]
            named = dict.fromkeys(row.text("item") for row in rows)
            items = (item.id for item in job.items if item.id in named or "" in named)
            yield IssuedUse(record, standing(record.revision, history.kept).word, job, tuple(items))


def _issued_rows(batch: str, kept: Kept, unread: list[str]) -> Iterator[Record]:
    record, held = kept.record, {}
    for name in record.files:
        if name.startswith(f"{READINGS}/"):
            try:
                held[name] = read_kept(kept, name)
            except RegisterError as reason:
                unread.append(str(reason))
    mapped = columns_in(held.pop(f"{READINGS}/{HEADINGS}", b""), unread)[0]
    files = [File(f"{record.document} {record.revision} {name}", data) for name, data in held.items()]
    for row in records_of(files, Asked(mapped, job=record.subject), Faults()):
        if _folded(row.text("batch")) == _folded(batch):
            yield row


def _records(file: Path, name: str, job: Job, mapped: Mapping[str, str], faults: Faults) -> list[Record]:
    return records_of([File(name, file.read_bytes())], Asked(mapped, job=job.id), faults)


def _folded(text: str) -> str:
    return "".join(text.split()).casefold()
