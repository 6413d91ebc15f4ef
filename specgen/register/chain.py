"""Is the register what it was? Links, numbers, order in time, every file against its hash. Called by `register verify` and issuing.

Found: any file changed, missing or added; any record changed or taken out but the newest of a document. That the newest was taken
out, or rewritten together with its sums, leaves no trace inside: a receipt exported before finds it (`receipt`).
"""

from __future__ import annotations

import hashlib
import os
import stat
from collections.abc import Iterator
from pathlib import Path

from specgen.register.certificate import Certificate, read_certificate
from specgen.register.failure import RegisterError
from specgen.register.folder import SUMS_LIMIT, read_kept, sums_text
from specgen.register.history import History, Kept
from specgen.register.json_text import read_bytes, sha256
from specgen.register.names import ALLOWED_SIGNERS, APPROVALS, CERTIFICATE, CUSTOMER_MODEL, MAKER_MODEL, RECORD, SUMS
from specgen.register.persons import names_person
from specgen.register.record import record_text
from specgen.register.signatures import signer_of
from specgen.source.characters import printable_name

_CHUNK = 1024 * 1024


def sound(found: History) -> History:
    """The same, where all of it can be read, its links hold and its newest record is whole. Raises RegisterError.

    A record added after a damaged one would vouch for the damage.
    """
    newest = _file_faults(found.head) if found.head is not None else ()
    faults = (*found.faults, *newest)
    if faults:
        raise RegisterError(f"the register of {found.document} is damaged, so nothing is added to it: {faults[0]}")
    return found


def all_faults(found: History) -> Iterator[str]:
    """Everything wrong with one document's part of the register, its files and certificates included."""
    yield from found.faults
    before = ""
    for kept in found.kept:
        if sha256(record_text(kept.record)) != kept.sha256:
            yield f"{kept.folder.parent.name}/{kept.folder.name}/{RECORD} is not as the register writes it"
        # that of the newest record was looked at when it was read
        yield from (fault for fault in _file_faults(kept) if fault not in found.faults)
        if kept.record.kind == "issue":
            yield from _certificate_faults(kept, before)
            before = kept.record.certificate


def left_behind(register: Path) -> list[str]:
    """Hidden folders of an issuing that was cut off; they are no part of the register and may be deleted."""
    try:
        return sorted(str(path.relative_to(register)) for path in register.glob("*/.*.stage"))
    except OSError:
        return []


def _file_faults(kept: Kept) -> Iterator[str]:
    record, at = kept.record, f"{kept.folder.parent.name}/{kept.folder.name}"
    there = set()
    for name, plain in _walk(kept.folder):
        there.add(name)
        if not plain:
            yield f"{at}/{printable_name(name)} is a link or no ordinary file"
        elif name not in record.files and name not in (RECORD, SUMS):
            yield f"{at}/{printable_name(name)} belongs to no record"
    for name in (*record.files, RECORD, SUMS):
        if name not in there:
            yield f"{at}/{printable_name(name)} is missing"
    for name, (expected, size) in record.files.items():
        if name in there and _hash(kept.folder / name) != (expected, size):
            yield f"{at}/{printable_name(name)} was altered"
    hashes = {name: hashed for name, (hashed, _) in record.files.items()} | {RECORD: kept.sha256}
    if SUMS in there:
        try:
            if read_bytes(kept.folder / SUMS, SUMS_LIMIT) != sums_text(hashes):
                yield f"{at}: {RECORD} or {SUMS} was altered"
        except RegisterError as reason:
            yield str(reason)


def _certificate_faults(kept: Kept, before: str) -> Iterator[str]:
    """The certificate says what the record says."""
    record, at = kept.record, f"{kept.folder.parent.name}/{kept.folder.name}"
    try:
        certificate = read_certificate(read_bytes(kept.folder / CERTIFICATE))
    except RegisterError as reason:
        yield f"{at}: {reason}"
        return
    models = tuple(record.files.get(name, ("", 0))[0] for name in (MAKER_MODEL, CUSTOMER_MODEL))
    said = (certificate.document, certificate.revision, certificate.issued, certificate.digest, certificate.previous)
    if (certificate.maker_model, certificate.customer_model) != models or said != (
        record.document,
        record.revision,
        record.time,
        record.digest,
        before,
    ):
        yield f"{at}: the certificate and the record differ"
    if record.files.get(CERTIFICATE, ("", 0))[0] != record.certificate:
        yield f"{at}: the record holds the hash of another certificate"
    yield from _approval_faults(kept, certificate, at)


def _approval_faults(kept: Kept, certificate: Certificate, at: str) -> Iterator[str]:
    """The approvals beside the certificate are those it carries, each bound to it, its signature by the one it names."""
    held = {name for name in kept.record.files if name.startswith(f"{APPROVALS}/") and name.endswith(".json")}
    try:
        listed = f"{APPROVALS}/{ALLOWED_SIGNERS}"
        allowed = read_kept(kept, listed) if listed in kept.record.files else None
        beside = {}
        for name in held:
            signature = f"{name}.sig"
            signed = read_kept(kept, signature) if signature in kept.record.files else b""
            beside[read_kept(kept, name)] = signed
        if beside != {one.text: one.signature for one in certificate.approvals}:
            yield f"{at}: the approvals and the certificate differ"
        for one in certificate.approvals:
            said = f"{at}: the approval of {one.approval.name}"
            bound = (one.approval.document, one.approval.revision, one.approval.digest)
            if bound != (certificate.document, certificate.revision, certificate.digest):
                yield f"{said} is bound to something else"
            if one.signature and allowed is None:
                yield f"{said} is signed, and no list of signers stands beside it"
            elif one.signature and allowed is not None:
                signer = signer_of(one.text, one.signature, allowed, one.approval.time)
                if not names_person(signer, one.approval.name):
                    yield f"{said} is signed with the key of {signer}"
    except RegisterError as reason:
        yield f"{at}: {reason}"


def _walk(folder: Path) -> Iterator[tuple[str, bool]]:
    waiting = [("", folder)]
    while waiting:
        prefix, here = waiting.pop()
        try:
            with os.scandir(here) as listing:
                entries = list(listing)
        except OSError:
            continue
        for entry in entries:
            name = prefix + entry.name
            if entry.is_dir(follow_symlinks=False):
                waiting.append((f"{name}/", Path(entry.path)))
            else:
                yield name, entry.is_file(follow_symlinks=False)


def _hash(path: Path) -> tuple[str, int]:
    """Hash and size, read in pieces; of what cannot be read, none that any file has."""
    taken, size = hashlib.sha256(), 0
    try:
        if not stat.S_ISREG(os.lstat(path).st_mode):
            return "", -1
        with path.open("rb") as stream:
            while piece := stream.read(_CHUNK):
                taken.update(piece)
                size += len(piece)
    except OSError:
        return "", -1
    return taken.hexdigest(), size
