"""Approvals: who takes on what, bound to one revision of a document and the digest of its frozen model. Called by approving and issuing.

They wait in `approvals/DOC/` of the project folder, and go into the record when the revision is issued. The fields are those of
a signature in 21 CFR 11.50: printed name, date and time, meaning. That who writes does not check, and who checks does not
approve, is common practice, no source.
"""

from __future__ import annotations

import re
import secrets
from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from hashlib import sha256
from pathlib import Path
from typing import Any, Literal

from specgen.model.file_names import file_stem
from specgen.register.editions import SALT_BYTES
from specgen.register.failure import RegisterError
from specgen.register.json_text import parsed, read_bytes, written
from specgen.register.names import ALLOWED_SIGNERS, APPROVALS, stem_of
from specgen.register.signatures import SIGNATURE_LIMIT, signer_of
from specgen.source.characters import printable_name

Role = Literal["check", "approve"]
ROLES: tuple[Role, ...] = ("check", "approve")
SALT_FILE = "salt.json"
_FIELDS = ("document", "revision", "digest", "role", "name", "meaning", "time")
_TIME = re.compile(r"[0-9]{4}-[0-9]{2}-[0-9]{2}T[0-9]{2}:[0-9]{2}:[0-9]{2}Z")


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
    """`check-jane-doe.json`; a name that letters a to z cannot hold gets a few signs of its hash."""
    slug = file_stem(name).lower()[:60].strip("-.")
    if slug != re.sub(r"\s+", "-", name.strip()).lower():
        slug = f"{slug}-{sha256(name.encode('utf-8')).hexdigest()[:8]}".lstrip("-")
    return f"{role}-{slug}.json"


def read_approval(data: bytes, named: str) -> Approval:
    """The approval in the bytes of a file. Raises RegisterError."""
    value = parsed(data, named)
    if set(value) != {"approval", *_FIELDS} or value["approval"] != "1" or not _texts(value):
        raise RegisterError(f"{named} is not an approval as `specgen approve` writes it")
    if value["role"] not in ROLES or not _TIME.fullmatch(value["time"]):
        raise RegisterError(f"{named} has a role or a time that is none")
    return Approval(*(value[field] for field in _FIELDS))


def collected(project: Path, document: str) -> list[Collected]:
    """Every approval that waits for the document, of whatever revision and digest, in the order of their names.

    Raises RegisterError for a file that is no approval, and for a signature that does not hold.
    """
    folder = approvals_folder(project, document)
    found = []
    for path in _listed(folder):
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
            signer = signer_of(text, signature, allowed)
        except RegisterError as reason:
            raise RegisterError(f"{path.name}: {reason}; sign it again or delete {beside.name}") from reason
        found.append(Collected(approval, path.name, text, signature, signer))
    return found


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
        who, role = same_person(one.approval.name), one.approval.role
        if who == same_person(preparer):
            yield f"{one.approval.name} prepared the document and cannot {role} it"
        if roles.setdefault(who, role) != role:
            yield f"{one.approval.name} cannot both check and approve"
        if one.signer and keys.setdefault(one.signer, who) != who:
            yield f"the key of {one.signer} signed for two names"


def same_person(name: str) -> str:
    """One spelling for one name: capitals and blanks do not make another person."""
    return " ".join(name.split()).casefold()


def allowed_signers(project: Path) -> bytes | None:
    path = project / ALLOWED_SIGNERS
    return read_bytes(path, 1024 * 1024) if path.exists() or path.is_symlink() else None


def kept_salt(project: Path, document: str, revision: str) -> bytes | None:
    """The salt drawn when this revision was first approved, None where there is none yet."""
    path = approvals_folder(project, document) / SALT_FILE
    if not path.exists() and not path.is_symlink():
        return None
    value = parsed(read_bytes(path, SIGNATURE_LIMIT), SALT_FILE)
    if value.get("document") != document or value.get("revision") != revision:
        return None
    try:
        salt = bytes.fromhex(str(value.get("salt")))
    except ValueError:
        salt = b""
    if len(salt) != SALT_BYTES:
        raise RegisterError(f"{SALT_FILE} of {document} is damaged; delete it and approve again")
    return salt


def new_salt() -> bytes:
    return secrets.token_bytes(SALT_BYTES)


def salt_text(document: str, revision: str, salt: bytes) -> bytes:
    return written({"document": document, "revision": revision, "salt": salt.hex()})


def _listed(folder: Path) -> list[Path]:
    if not folder.exists():
        return []
    try:
        return sorted(
            path
            for path in folder.iterdir()
            if path.suffix == ".json" and path.name != SALT_FILE and not path.name.startswith(".")
        )
    except OSError as error:
        raise RegisterError(f"{printable_name(str(folder))} cannot be read: {error.strerror or error}") from error


def _texts(value: dict[str, Any]) -> bool:
    return all(isinstance(one, str) and one and len(one) <= 2000 for one in value.values())
