"""Approve a document: bind a name, a role and a meaning to what would be issued now. Called by `specgen approve`."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import date, datetime
from pathlib import Path

from specgen.issuing.candidate import Refused, candidate
from specgen.register.approvals import (
    SALT_FILE,
    Approval,
    Collected,
    approval_file,
    approval_text,
    approvals_folder,
    binding,
    collected,
    conflicts,
    kept_salt,
    read_approval,
    salt_text,
)
from specgen.register.failure import RegisterError
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
    found = candidate(folder, register, document, on)
    approval = Approval(document, found.revision, found.digest, role, name, meaning, now.strftime("%Y-%m-%dT%H:%M:%SZ"))
    text, file = approval_text(approval), approval_file(role, name)
    # what cannot be read back is not written
    read_approval(text, file)
    before = binding(collected(folder, document), document, found.revision, found.digest)
    together = [one for one in before if one.file != file] + [Collected(approval, file, text)]
    against = tuple(conflicts(together, found.preparer))
    if against:
        raise Refused(*against)
    place = approvals_folder(folder, document)
    written = {file: text}
    if kept_salt(folder, document, found.revision) is None:
        written = {SALT_FILE: salt_text(document, found.revision, found.salt), **written}
    try:
        place.mkdir(parents=True, exist_ok=True)
        # a signature beside it is of what was said before
        (place / f"{file}.sig").unlink(missing_ok=True)
        write_all(place, written)
    except (OSError, ValueError) as error:
        why = getattr(error, "strerror", None) or error
        raise RegisterError(f"{printable_name(str(place))} cannot be written to: {why}") from error
    return Approved(approval, place / file)
