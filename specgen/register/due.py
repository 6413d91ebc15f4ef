"""Which revisions in force are due for another, and on what ground of the project's policy. Called by `register overdue`."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping, Set
from dataclasses import dataclass
from datetime import date

from specgen.comparison.reference_snapshot import Snapshot, changed, lists_all
from specgen.facts.closure import cut_to_closure
from specgen.model.file_names import record_number, sheet_number
from specgen.model.job import Job
from specgen.model.product import Product
from specgen.model.project import Policies, RevisionGround
from specgen.model.spec import Spec
from specgen.register.editions import is_content
from specgen.register.history import History
from specgen.register.names import READINGS
from specgen.register.record import Record
from specgen.register.state import in_force, overdue, suspects

_NAMED = 5
_OF_JOB: Mapping[str, Callable[[Job], str]] = {"job": lambda job: job.document.number, "records": record_number}

Readings = Callable[[Job], Mapping[str, str]]
"""From a job to the files of readings the folder keeps of it, each name to its SHA-256."""
LookedInto = Callable[[Record], Set[str]]
"""From a record to the tables and documents that its document looks into today."""


@dataclass(frozen=True, slots=True)
class Due:
    """One ground that holds for one revision; `forces` where the policy says that it asks for another."""

    record: Record
    why: str
    forces: bool


def due(
    found: Mapping[str, History],
    spec: Spec | None,
    now: Snapshot,
    on: date,
    looked_into: LookedInto,
    sheets: Mapping[str, History],
    readings: Readings,
) -> Iterator[Due]:
    """By document, then ground. `spec` is that of the sources as they stand, None where they cannot be read; `sheets` are the
    documents in the register of their range.

    `now` is the snapshot of all reference data; `looked_into` is asked of records that list more than they rest on.
    """
    grounds = (spec.project.policies or Policies()).revision_forced_by if spec is not None else tuple(RevisionGround)
    moved = {document: list[str]() for document in found}
    for suspect in suspects(found, sheets):
        moved[suspect.record.document].append(f"it rests on {suspect.reference}: {suspect.why}")
    for document, history in found.items():
        kept = in_force(history)
        if kept is None:
            continue
        record = kept.record
        content = _content(record, spec) if record.about != "records" else _readings(record, spec, readings)
        reasons = [(RevisionGround.CONTENT, why) for why in content]
        reasons += [(RevisionGround.SHEETS, why) for why in moved[document]]
        if record.about == "records":
            # what was done is held against the limits and tables of its day
            yield from (Due(record, why, ground in grounds) for ground, why in reasons)
            continue
        reasons += [(RevisionGround.TABLES, why) for why in _tables(record, now, looked_into)]
        if overdue(history, on):
            reasons.append((RevisionGround.REVIEW, f"its review was due by {record.next_review}"))
        yield from (Due(record, why, ground in grounds) for ground, why in reasons)


def subject_of(record: Record, spec: Spec) -> Job | Product | None:
    """The job or product a record was issued about, where the sources still hold it under that number."""
    job, product = spec.jobs.get(record.subject), spec.products.get(record.subject)
    if record.about in _OF_JOB:
        return job if job is not None and _OF_JOB[record.about](job) == record.document else None
    return product if product is not None and sheet_number(product) == record.document else None


def _content(record: Record, spec: Spec | None) -> Iterator[str]:
    if spec is None:
        return
    subject = subject_of(record, spec)
    if subject is None:
        yield f"the sources hold no {record.about} {record.subject} of this number any more"
    elif not is_content(cut_to_closure(spec, subject), record.content):
        yield "the sources say something else now"


def _readings(record: Record, spec: Spec | None, readings: Readings) -> Iterator[str]:
    """Files that are other or more or fewer than those the record was made from."""
    subject = subject_of(record, spec) if spec is not None else None
    if not isinstance(subject, Job):
        return
    held = {name: hashed for name, (hashed, _) in record.files.items() if name.startswith(f"{READINGS}/")}
    now = readings(subject)
    for name in sorted({*held, *now}):
        if name not in now:
            yield f"{name}, of which it was made, is not kept in the folder any more"
        elif name not in held:
            yield f"{name} was added since"
        elif held[name] != now[name]:
            yield f"{name} was changed since"


def _tables(record: Record, now: Snapshot, looked_into: LookedInto) -> Iterator[str]:
    moved = changed(record.snapshot, now, lambda: looked_into(record))
    if not lists_all(record.snapshot):
        moved = sorted({*moved, *(name for name in record.snapshot if name not in now)})
    if moved:
        more = f" and {len(moved) - _NAMED} more" if len(moved) > _NAMED else ""
        yield f"published tables changed: {', '.join(moved[:_NAMED])}{more}"
