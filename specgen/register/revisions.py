"""The revisions of a document for its own pages: which there were, when and why, and on whose word. Called by printing and issuing."""

from __future__ import annotations

from dataclasses import dataclass
from pathlib import Path

from specgen.register.certificate import read_certificate
from specgen.register.failure import RegisterError
from specgen.register.folder import history_of, read_kept
from specgen.register.history import History
from specgen.register.names import CERTIFICATE
from specgen.register.state import issues, standing


@dataclass(frozen=True, slots=True)
class Revision:
    """One that was issued: `who` are role and name of each approval; `withdrawn` is the day it was, and why, or empty."""

    revision: str
    day: str
    reason: str
    who: tuple[tuple[str, str], ...]
    withdrawn: tuple[str, str] | None = None


@dataclass(frozen=True, slots=True)
class Revisions:
    """Those issued so far, in order; none of them, and `whole` False, where the chain does not hold."""

    issued: tuple[Revision, ...] = ()
    whole: bool = True


def revisions_of(register: Path, document: str) -> Revisions:
    """By the number of the document; none where the register does not know it."""
    try:
        return revisions(history_of(register, document))
    except RegisterError:
        return Revisions(whole=False)


def revisions(found: History) -> Revisions:
    """Raises RegisterError where a certificate was altered since it was issued."""
    if found.faults:
        return Revisions(whole=False)
    listed = []
    for kept in issues(found.kept):
        given = read_certificate(read_kept(kept, CERTIFICATE)).approvals
        stands = standing(kept.record.revision, found.kept)
        listed.append(
            Revision(
                kept.record.revision,
                kept.record.day,
                kept.record.reason,
                tuple((one.approval.role, one.approval.name) for one in given),
                (stands.since, stands.reason) if stands.word == "withdrawn" else None,
            )
        )
    return Revisions(tuple(listed))
