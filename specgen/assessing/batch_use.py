"""Where a batch of paint went, by the records of the jobs of a folder: the question of a recall. Called by `where-used`.

Records are the files that the folder keeps (`kept`), and those of as-built records that were issued. What cannot be read or belongs to
no job is told, and so is a job that records no batch: silence about it is no proof that it has none.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass
from pathlib import Path

from specgen.assessing.faults import Faults
from specgen.assessing.kept import HEADINGS, columns_in, headings, job_of, kept_files
from specgen.assessing.readings import Asked, File, records_of
from specgen.assessing.records import Record
from specgen.model.job import Job
from specgen.model.spec import Spec
from specgen.register.failure import RegisterError
from specgen.register.folder import read_kept
from specgen.register.frozen import thawed
from specgen.register.history import History, Kept
from specgen.register.names import MAKER_MODEL, READINGS
from specgen.register.record import Record as IssueRecord
from specgen.register.state import issues, standing


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
class Recall:
    """Where the batch is recorded, every batch that is, jobs that record none, and what could not be read, in a sentence each."""

    uses: tuple[BatchUse, ...]
    batches: tuple[str, ...]
    unrecorded: tuple[str, ...]
    unread: tuple[str, ...]


def recall(batch: str, folder: Path, spec: Spec) -> Recall:
    """What the records of a folder say of a batch; capitals and blanks in its number do not count."""
    uses: list[BatchUse] = []
    batches: dict[str, str] = {}
    recorded: set[str] = set()
    unread: list[str] = []
    columns, _ = headings(folder, unread)
    for file in kept_files(folder, unread):
        job = job_of(file, spec)
        name = f"{READINGS}/{file.name}"
        if job is None:
            unread.append(f"{name} is not called by a job of this folder")
            continue
        faults = Faults()
        for record in _records(file, name, job, columns, faults):
            stated = record.text("batch")
            if not stated:
                continue
            recorded.add(job.id)
            batches.setdefault(_folded(stated), stated)
            if _folded(stated) == _folded(batch):
                uses.append(BatchUse(job, record))
        unread.extend(f"{fault.place}: {fault.what}" for fault in faults)
    return Recall(
        tuple(uses), tuple(batches.values()), tuple(job for job in spec.jobs if job not in recorded), tuple(unread)
    )


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
            spec = thawed(read_kept(kept, MAKER_MODEL), f"{record.document}@{record.revision}").spec
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
    columns = columns_in(held.pop(f"{READINGS}/{HEADINGS}", b""), unread)[0]
    files = [File(f"{record.document} {record.revision} {name}", data) for name, data in held.items()]
    for row in records_of(files, Asked(columns, job=record.subject), Faults()):
        if _folded(row.text("batch")) == _folded(batch):
            yield row


def _records(file: Path, name: str, job: Job, columns: Mapping[str, str], faults: Faults) -> list[Record]:
    return records_of([File(name, file.read_bytes())], Asked(columns, job=job.id), faults)


def _folded(text: str) -> str:
    return "".join(text.split()).casefold()
