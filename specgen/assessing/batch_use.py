"""Where a batch of paint went, by the records of the jobs of a folder: the question of a recall. Called by `where-used`.

Records stand in the folder `readings` beside the sources, each file called by its job (`DOORS-record.csv` is of the job `DOORS`). What
cannot be read or belongs to no job is told, and so is a job that records no batch: silence about it is no proof that it has none.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from pathlib import Path

from specgen.assessing.faults import Faults
from specgen.assessing.readings import Asked, File, records_of
from specgen.assessing.records import Record
from specgen.assessing.text_table import MOST_BYTES
from specgen.model.job import Job
from specgen.model.spec import Spec

READINGS = "readings"
_KINDS = frozenset({".csv", ".txt", ".tsv", ".xlsx", ".pdf"})
_MOST_FILES = 2000


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
    for file in _files(folder, unread):
        job = _job_of(file, spec)
        name = f"{READINGS}/{file.name}"
        if job is None:
            unread.append(f"{name} is not called by a job of this folder")
            continue
        faults = Faults()
        for record in _records(file, name, job, faults):
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


def _files(folder: Path, unread: list[str]) -> Iterator[Path]:
    place = folder / READINGS
    if not place.is_dir() or place.is_symlink():
        return
    found = sorted(one for one in place.iterdir() if one.suffix.lower() in _KINDS)
    if len(found) > _MOST_FILES:
        unread.append(f"{READINGS} holds more than {_MOST_FILES} files; the others are not read")
    for file in found[:_MOST_FILES]:
        if file.is_symlink() or not file.is_file() or file.stat().st_size > MOST_BYTES:
            unread.append(f"{READINGS}/{file.name} is a link, no file, or too large")
        else:
            yield file


def _records(file: Path, name: str, job: Job, faults: Faults) -> list[Record]:
    return records_of([File(name, file.read_bytes())], Asked(job=job.id), faults)


def _job_of(file: Path, spec: Spec) -> Job | None:
    """The job with the longest id that the name of the file begins with, up to a sign that is no part of the id."""
    named = [key for key in spec.jobs if file.stem == key or file.stem.startswith((f"{key}-", f"{key}_", f"{key}."))]
    return spec.jobs[max(named, key=len)] if named else None


def _folded(text: str) -> str:
    return "".join(text.split()).casefold()
