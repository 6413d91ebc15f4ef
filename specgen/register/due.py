"""Which revisions in force are due for another, and on what ground of the project's policy. Called by `register overdue`."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from datetime import date

from specgen.facts.closure import cut_to_closure
from specgen.model.file_names import sheet_number
from specgen.model.project import Policies, RevisionGround
from specgen.model.spec import Spec
from specgen.register.editions import content_sha256
from specgen.register.history import History
from specgen.register.record import Record
from specgen.register.state import in_force, overdue, suspects

_NAMED = 5


@dataclass(frozen=True, slots=True)
class Due:
    """One ground that holds for one revision; `forces` where the policy says that it asks for another."""

    record: Record
    why: str
    forces: bool


def due(found: Mapping[str, History], spec: Spec | None, shelf: Mapping[str, str], on: date) -> Iterator[Due]:
    """By document, then ground. `spec` is that of the sources as they stand, None where they cannot be read."""
    grounds = (spec.project.policies or Policies()).revision_forced_by if spec is not None else tuple(RevisionGround)
    moved = {document: list[str]() for document in found}
    for suspect in suspects(found):
        moved[suspect.record.document].append(f"it rests on {suspect.reference}: {suspect.why}")
    for document, history in found.items():
        kept = in_force(history)
        if kept is None:
            continue
        record = kept.record
        reasons = [(RevisionGround.CONTENT, why) for why in _content(record, spec)]
        reasons += [(RevisionGround.SHEETS, why) for why in moved[document]]
        reasons += [(RevisionGround.TABLES, why) for why in _tables(record, shelf)]
        if overdue(history, on):
            reasons.append((RevisionGround.REVIEW, f"its review was due by {record.next_review}"))
        yield from (Due(record, why, ground in grounds) for ground, why in reasons)


def _content(record: Record, spec: Spec | None) -> Iterator[str]:
    if spec is None:
        return
    subject = spec.jobs.get(record.subject) if record.about == "job" else spec.products.get(record.subject)
    number = None
    if subject is not None:
        number = subject.document.number if record.about == "job" and subject.document else None
        number = number or sheet_number(spec.products[record.subject]) if record.about == "product" else number
    if subject is None or number != record.document:
        yield f"the sources hold no {record.about} {record.subject} of this number any more"
    elif content_sha256(cut_to_closure(spec, subject)) != record.content:
        yield "the sources say something else now"


def _tables(record: Record, shelf: Mapping[str, str]) -> Iterator[str]:
    changed = sorted(name for name in {*shelf, *record.shelf} if shelf.get(name) != record.shelf.get(name))
    if changed:
        more = f" and {len(changed) - _NAMED} more" if len(changed) > _NAMED else ""
        yield f"published tables changed: {', '.join(changed[:_NAMED])}{more}"
