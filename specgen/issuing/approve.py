"""Approve a document: bind a name, a role and a meaning to what would be issued now. Called by `specgen approve`."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import date, datetime
from pathlib import Path

from specgen.issuing.candidate import Candidate, candidate
from specgen.issuing.refused import Refused
from specgen.register.approvals import (
    Approval,
    Collected,
    approval_file,
    approval_text,
    approvals_folder,
    binding,
    claimed_salt,
    collected,
    conflicts,
    read_approval,
)
from specgen.register.failure import RegisterError
from specgen.register.persons import person
from specgen.rendering.writing import write_all
from specgen.source.characters import printable_name


@dataclass(frozen=True, slots=True)
class Approved:
    """What was recorded, and the file to sign."""

    approval: Approval
    path: Path


def approve(
    folder: Path, register: Path, document: str, *, role: str, name: str, meaning: str, on: date, now: datetime
) -> Approved:
    """Writes `approvals/DOC/ROLE-NAME.json`. The same person in the same role writes over what they said before.

    Raises SourceError, RegisterError, or Refused where the sources or the person stand against it.
    """
    said = (role, name, meaning, now.strftime("%Y-%m-%dT%H:%M:%SZ"))
    found, approval, file = _given(folder, register, document, on, said)
    place = approvals_folder(folder, document)
    try:
        if claimed_salt(folder, document, found.revision, found.salt) != found.salt:
            # someone else drew the salt of this revision meanwhile: the digest rests on theirs
            _, approval, file = _given(folder, register, document, on, said)
        # a signature beside it is of what was said before
        (place / f"{file}.sig").unlink(missing_ok=True)
        write_all(place, {file: approval_text(approval)})
    except (OSError, ValueError) as error:
        why = getattr(error, "strerror", None) or error
        raise RegisterError(f"{printable_name(str(place))} cannot be written to: {why}") from error
    return Approved(approval, place / file)


def _given(
    folder: Path, register: Path, document: str, on: date, said: tuple[str, str, str, str]
) -> tuple[Candidate, Approval, str]:
    """The candidate, the approval of it, and the file the approval goes into. Raises Refused where something stands against it."""
    found = candidate(folder, register, document, on)
    approval = Approval(document, found.revision, found.digest, *said)
    text, file = approval_text(approval), approval_file(approval.role, approval.name)
    # what cannot be read back is not written
    read_approval(text, file)
    waiting = collected(folder, document)
    before = binding(waiting, document, found.revision, found.digest)
    together = [one for one in before if one.file != file] + [Collected(approval, file, text)]
    against = [*conflicts(together, found.preparer)]
    against += [
        f"{file} holds what {one.approval.name} said; give the name in full"
        for one in waiting
        if one.file == file and person(one.approval.name) != person(approval.name)
    ]
    if against:
        raise Refused(*against)
    return found, approval, file
