"""Where a batch of paint went, by the records of the jobs of a folder: the question of a recall. Called by `where-used`.

Records are the files that the folder keeps (`kept`). What cannot be read or belongs to no job is told, and so is a job that records no
batch: silence about it is no proof that it has none.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from pathlib import Path

from specgen.assessing.faults import Faults
from specgen.assessing.kept import READINGS, headings, job_of, kept_files
from specgen.assessing.readings import Asked, File, records_of
from specgen.assessing.records import Record
from specgen.model.job import Job
from specgen.model.spec import Spec


@dataclass(frozen=True, slots=True)
class BatchUse:
    """A row that names the batch, and the job whose record it stands in."""

    job: Job
    record: Record


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


def _records(file: Path, name: str, job: Job, columns: Mapping[str, str], faults: Faults) -> list[Record]:
    return records_of([File(name, file.read_bytes())], Asked(columns, job=job.id), faults)


def _folded(text: str) -> str:
    return "".join(text.split()).casefold()
