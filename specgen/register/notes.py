"""Records that issue nothing: a revision is withdrawn, a holder says that it has one. Called by the commands."""

from __future__ import annotations

from datetime import UTC, datetime
from pathlib import Path

from specgen.register.chain import sound
from specgen.register.failure import RegisterError
from specgen.register.folder import Step, append, history_of, no_step
from specgen.register.history import History, Kept
from specgen.register.record import Kind, Record
from specgen.register.state import issues, standing


def withdraw(
    register: Path, document: str, revision: str, *, reason: str, by: str, now: datetime, step: Step = no_step
) -> Kept:
    """Adds the record that a revision is withdrawn, from this moment on. Raises RegisterError."""
    found, issued = _issued(register, document, revision)
    if standing(revision, found.kept).word == "withdrawn":
        raise RegisterError(f"{document} {revision} is withdrawn already")
    return append(register, _note("withdrawal", found, issued, reason, by, now), {}, step)


def acknowledge(register: Path, document: str, revision: str, *, by: str, now: datetime, step: Step = no_step) -> Kept:
    """Adds the record that a holder has a revision. Raises RegisterError where it is none of its holders."""
    found, issued = _issued(register, document, revision)
    holders = issued.record.holders
    name = next((holder for holder in holders if _spelled(holder) == _spelled(by)), None)
    if name is None:
        raise RegisterError(f"{by} is no holder of {document} {revision}; there is: {'; '.join(holders) or 'none'}")
    if any(
        one.record.kind == "receipt" and one.record.by == name and one.record.revision == revision for one in found.kept
    ):
        raise RegisterError(f"{name} has acknowledged {document} {revision} already")
    return append(register, _note("receipt", found, issued, "", name, now), {}, step)


def _issued(register: Path, document: str, revision: str) -> tuple[History, Kept]:
    found = sound(history_of(register, document))
    issued = {kept.record.revision: kept for kept in issues(found.kept)}
    if revision not in issued:
        known = f"there is: {', '.join(issued)}" if issued else "this register does not know the document"
        raise RegisterError(f"there is no {document} {revision}; {known}")
    return found, issued[revision]


def _note(kind: Kind, found: History, issued: Kept, reason: str, by: str, now: datetime) -> Record:
    head = found.kept[-1]
    time = now.astimezone(UTC).strftime("%Y-%m-%dT%H:%M:%SZ")
    if time < head.record.time:
        raise RegisterError(
            f"the last record of {found.document} is of {head.record.time}, this clock says {time}; set the clock"
        )
    record = issued.record
    return Record(
        kind,
        head.record.number + 1,
        record.document,
        record.revision,
        time,
        reason,
        by,
        head.sha256,
        record.about,
        record.subject,
        record.title,
    )


def _spelled(holder: str) -> str:
    """A holder as the project names it: capitals and blanks make no other one; brackets do, as in Depot (North)."""
    return " ".join(holder.split()).casefold()
