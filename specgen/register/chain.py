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

from specgen.model.file_names import file_stem
from specgen.register.certificate import read_certificate
from specgen.register.failure import RegisterError
from specgen.register.folder import History, Kept, sums_text
from specgen.register.json_text import read_bytes, sha256
from specgen.register.names import CERTIFICATE, CUSTOMER_MODEL, MAKER_MODEL, RECORD, SUMS
from specgen.register.record import record_text
from specgen.source.characters import printable_name

_CHUNK = 1024 * 1024
_SUMS_LIMIT = 16 * 1024 * 1024


def link_faults(found: History) -> Iterator[str]:
    """What is wrong with numbers, names, order and links, by the records alone."""
    previous, time = "", ""
    revisions: set[str] = set()
    for expected, kept in enumerate(found.kept, 1):
        record, at = kept.record, f"{kept.folder.parent.name}/{kept.folder.name}"
        if record.number != int(kept.folder.name):
            yield f"{at} holds the record {record.number}"
        if int(kept.folder.name) != expected:
            yield f"{at}: record {expected} is missing before it"
            return
        if record.document != found.document or file_stem(record.document) != kept.folder.parent.name:
            yield f"{at} is a record of {record.document}"
        if record.previous != previous:
            yield f"{at} does not follow from the record before it"
        if record.time < time:
            yield f"{at} is older than the record before it"
        if record.kind == "issue":
            if record.revision in revisions:
                yield f"{at} uses the revision {record.revision} again"
            revisions.add(record.revision)
        elif record.revision not in revisions:
            yield f"{at} speaks of the revision {record.revision}, which was never issued"
        previous, time = kept.sha256, record.time


def sound(found: History) -> History:
    """The same, where all of it can be read, its links hold and its newest record is whole. Raises RegisterError.

    A record added after a damaged one would vouch for the damage.
    """
    newest = _file_faults(found.head) if found.head is not None else ()
    faults = (*found.faults, *link_faults(found), *newest)
    if faults:
        raise RegisterError(f"the register of {found.document} is damaged, so nothing is added to it: {faults[0]}")
    return found


def all_faults(found: History) -> Iterator[str]:
    """Everything wrong with one document's part of the register, its files and certificates included."""
    yield from found.faults
    yield from link_faults(found)
    before = ""
    for kept in found.kept:
        if sha256(record_text(kept.record)) != kept.sha256:
            yield f"{kept.folder.parent.name}/{kept.folder.name}/{RECORD} is not as the register writes it"
        yield from _file_faults(kept)
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
            if read_bytes(kept.folder / SUMS, _SUMS_LIMIT) != sums_text(hashes):
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
