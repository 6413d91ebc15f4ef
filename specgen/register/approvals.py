"""Approvals: who takes on what, bound to one revision of a document and the digest of its frozen model. Called by approving and issuing.

They wait in `approvals/DOC/` of the project folder, and go into the record when the revision is issued. The fields are those of
a signature in 21 CFR 11.50: printed name, date and time, meaning. That who writes does not check, and who checks does not
approve, is common practice, no source.
"""

from __future__ import annotations

import os
import re
import secrets
from collections.abc import Iterable, Iterator
from contextlib import suppress
from dataclasses import dataclass
from datetime import datetime
from hashlib import sha256
from pathlib import Path
from typing import Any, Literal

from specgen.model.file_names import file_stem
from specgen.register.disk import confirm, write_new
from specgen.register.editions import SALT_BYTES
from specgen.register.failure import RegisterError
from specgen.register.json_text import parsed, read_bytes, written
from specgen.register.names import ALLOWED_SIGNERS, APPROVALS, safe, stem_of
from specgen.register.persons import names_person, person
from specgen.register.signatures import SIGNATURE_LIMIT, signer_of
from specgen.source.characters import first_refused, printable_name
from specgen.source.characters import named as character

Role = Literal["check", "approve"]
ROLES: tuple[Role, ...] = ("check", "approve")
_SALT = "salt-"
_FIELDS = ("document", "revision", "digest", "role", "name", "meaning", "time")
_TIME = "%Y-%m-%dT%H:%M:%SZ"
_PLAIN = re.compile(r"[A-Za-z]+( [A-Za-z]+)*")


@dataclass(frozen=True, slots=True)
class Approval:
    """One approval. `time` is UTC, `2026-11-25T16:02:03Z`; `digest` that of `editions.digest`."""

    document: str
    revision: str
    digest: str
    role: str
    name: str
    meaning: str
    time: str


@dataclass(frozen=True, slots=True)
class Collected:
    """An approval as found: its file name, its very bytes, its signature where it has one and the principal who made it."""

    approval: Approval
    file: str
    text: bytes
    signature: bytes | None = None
    signer: str = ""


def approvals_folder(project: Path, document: str) -> Path:
    return project / APPROVALS / stem_of(document)


def approval_text(approval: Approval) -> bytes:
    return written({"approval": "1", **{field: getattr(approval, field) for field in _FIELDS}})


def approval_file(role: str, name: str) -> str:
    """`check-jane-doe.json`. Two names never meet in one file: any but plain words of letters a to z gets 80 bits of its hash."""
    slug = file_stem(name).lower()[:60].strip("-.")
    if len(name) > 60 or not _PLAIN.fullmatch(name):
        slug = f"{slug}-{sha256(name.encode('utf-8')).hexdigest()[:20]}".lstrip("-")
    return f"{role}-{slug}.json"


def read_approval(data: bytes, named: str) -> Approval:
    """The approval in the bytes of a file. Raises RegisterError."""
    value = parsed(data, named)
    if set(value) != {"approval", *_FIELDS} or value["approval"] != "1" or not _texts(value):
        raise RegisterError(f"{named} is not an approval as `specgen approve` writes it")
    if value["role"] not in ROLES or not _is_time(value["time"]):
        raise RegisterError(f"{named} has a role or a time that is none")
    odd = next((sign for field in _FIELDS if (sign := first_refused(value[field])) is not None), None)
    if odd is not None:
        raise RegisterError(f"{named} holds {character(odd)}, which nobody sees and no approval needs")
    return Approval(*(value[field] for field in _FIELDS))


def collected(project: Path, document: str) -> list[Collected]:
    """Every approval that waits for the document, of whatever revision and digest, in the order of their names.

    Raises RegisterError for a file that is no approval, and for a signature that does not hold.
    """
    folder = approvals_folder(project, document)
    found = []
    for path in _listed(folder):
        if not safe(f"{APPROVALS}/{path.name}.sig"):
            raise RegisterError(
                f"{printable_name(path.name)} in {APPROVALS} has a name no register can keep; rename or delete it"
            )
        text = read_bytes(path, SIGNATURE_LIMIT)
        approval = read_approval(text, path.name)
        beside = path.with_name(f"{path.name}.sig")
        if not beside.exists() and not beside.is_symlink():
            found.append(Collected(approval, path.name, text))
            continue
        signature = read_bytes(beside, SIGNATURE_LIMIT)
        allowed = allowed_signers(project)
        if allowed is None:
            raise RegisterError(
                f"{path.name} is signed, and the project folder has no {ALLOWED_SIGNERS} file to check it against"
            )
        try:
            signer = signer_of(text, signature, allowed, approval.time)
        except RegisterError as reason:
            raise RegisterError(f"{path.name}: {reason}; sign it again or delete {beside.name}") from reason
        found.append(Collected(approval, path.name, text, signature, signer))
    return found


def waiting_digests(project: Path, document: str) -> frozenset[str]:
    """What the approvals that wait are bound to; whether they hold is for `collected` to say."""
    found = set()
    for path in _listed(approvals_folder(project, document)):
        with suppress(RegisterError):
            found.add(read_approval(read_bytes(path, SIGNATURE_LIMIT), path.name).digest)
    return frozenset(found)


def binding(waiting: Iterable[Collected], document: str, revision: str, digest: str) -> list[Collected]:
    """Those that are bound to this very content; any change since has voided the others."""
    return [
        one
        for one in waiting
        if (one.approval.document, one.approval.revision, one.approval.digest) == (document, revision, digest)
    ]


def conflicts(approvals: Iterable[Collected], preparer: str) -> Iterator[str]:
    """Who has no business approving: the preparer, a person in two roles, a key that stands for two names."""
    roles: dict[str, str] = {}
    keys: dict[str, str] = {}
    for one in approvals:
        who, role = person(one.approval.name), one.approval.role
        if who == person(preparer):
            yield f"{one.approval.name} prepared the document and cannot {role} it"
        if one.signer and not names_person(one.signer, one.approval.name):
            yield (
                f"{one.file} is in the name of {one.approval.name} and signed with the key of {one.signer}; whoever is "
                f"named has to sign, and {ALLOWED_SIGNERS} has to name that person, as in ada.quill@example.org"
            )
        if roles.setdefault(who, role) != role:
            yield f"{one.approval.name} cannot both check and approve"
        if one.signer and keys.setdefault(one.signer, who) != who:
            yield f"the key of {one.signer} signed for two names"


def allowed_signers(project: Path) -> bytes | None:
    path = project / ALLOWED_SIGNERS
    return read_bytes(path, 1024 * 1024) if path.exists() or path.is_symlink() else None


def kept_salt(project: Path, document: str, revision: str) -> bytes | None:
    """The salt drawn when this revision was first approved, None where there is none yet."""
    path = approvals_folder(project, document) / salt_file(revision)
    if not path.exists() and not path.is_symlink():
        return None
    value = parsed(read_bytes(path, SIGNATURE_LIMIT), path.name)
    if value.get("document") != document or value.get("revision") != revision:
        return None
    try:
        salt = bytes.fromhex(str(value.get("salt")))
    except ValueError:
        salt = b""
    if len(salt) != SALT_BYTES:
        raise RegisterError(f"{path.name} of {document} is damaged; delete it and approve again")
    return salt


def new_salt() -> bytes:
    return secrets.token_bytes(SALT_BYTES)


def claimed_salt(project: Path, document: str, revision: str, drawn: bytes) -> bytes:
    """The one salt of a revision: `drawn`, or what another approver stored a moment before. Raises OSError."""
    final = approvals_folder(project, document) / salt_file(revision)
    final.parent.mkdir(parents=True, exist_ok=True)
    own = final.with_name(f".{final.name}.{secrets.token_hex(6)}.tmp")
    try:
        write_new(own, written({"document": document, "revision": revision, "salt": drawn.hex()}))
        with suppress(FileExistsError):
            # a link is made only where nothing stands: of two who come at once, one is first
            os.link(own, final)
            confirm(final.parent)
    finally:
        own.unlink(missing_ok=True)
    return kept_salt(project, document, revision) or drawn


def salt_file(revision: str) -> str:
    return f"{_SALT}{file_stem(revision)}-{sha256(revision.encode('utf-8')).hexdigest()[:8]}.json"


def _listed(folder: Path) -> list[Path]:
    if not folder.exists():
        return []
    try:
        return sorted(
            path for path in folder.iterdir() if path.suffix == ".json" and not path.name.startswith((".", _SALT))
        )
    except OSError as error:
        raise RegisterError(f"{printable_name(str(folder))} cannot be read: {error.strerror or error}") from error


def _is_time(text: str) -> bool:
    try:
        return datetime.strptime(text, _TIME).strftime(_TIME) == text  # noqa: DTZ007  # the Z stands in the pattern
    except ValueError:
        return False


def _texts(value: dict[str, Any]) -> bool:
    return all(isinstance(one, str) and one and len(one) <= 2000 for one in value.values())
