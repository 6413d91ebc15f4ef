"""The register on disk: a record is added by one renaming, or not at all; reading never writes. Called by issuing and the commands.

All files of a record are written into a hidden folder beside its place, each and the folder confirmed on disk, and the folder is
then renamed. Its place is never made first: a renaming would silently replace an empty folder, and two could win.
"""

from __future__ import annotations

import errno
import os
import secrets
import shutil
from collections.abc import Callable, Iterator, Mapping, Sequence
from contextlib import suppress
from pathlib import Path

from specgen.register.disk import confirm, write_new
from specgen.register.failure import RegisterError, TakenError
from specgen.register.history import History, Kept, link_faults
from specgen.register.json_text import PDF_LIMIT, read_bytes, refuse_large, sha256
from specgen.register.names import (
    CERTIFICATE,
    CUSTOMER_MODEL,
    MAKER_MODEL,
    RECORD,
    SUMS,
    folder_of,
    record_folder,
    record_number,
    safe,
)
from specgen.register.record import Record, read_record, record_text
from specgen.source.characters import printable_name

Step = Callable[[str], None]
"""Told the name of each step before it is taken; tests make it fail there."""

MOST_RECORDS = 200_000
SUMS_LIMIT = 16 * 1024 * 1024
_TAKEN = {errno.EEXIST, errno.ENOTEMPTY, errno.ENOTDIR, errno.EISDIR}


def no_step(name: str) -> None:
    """What a step is told outside the tests: nothing."""


def append(register: Path, record: Record, files: Mapping[str, bytes], step: Step = no_step) -> Kept:
    """Adds the record with its files as one step that happens whole or not at all.

    Raises TakenError where another record has the number, RegisterError where the disk refuses; the register is then as
    it was, but for folders that were empty. `record.files` is filled in by the caller (`file_hashes`).
    """
    place = folder_of(register, record.document) / record_folder(record.number)
    held = {**files, RECORD: record_text(record)}
    read_record(held[RECORD], f"the record of {printable_name(record.document)}")
    _refuse_unreadable(held)
    held[SUMS] = sums_text({name: sha256(data) for name, data in held.items()})
    stage = place.with_name(f".{place.name}.{secrets.token_hex(6)}.stage")
    made = _missing(place.parent)
    renamed = False
    try:
        step("make the document's folder")
        place.parent.mkdir(parents=True, exist_ok=True)
        for folder in made:
            confirm(folder.parent)
        step("make the stage")
        stage.mkdir()
        _fill(stage, held, step)
        step("read the record back")
        if read_record(read_bytes(stage / RECORD), RECORD) != record:
            raise RegisterError("the disk gave back another record than was written; nothing was changed")
        step("rename")
        # an empty folder of that name holds no record and is replaced
        os.rename(stage, place)  # noqa: PTH104  # the tests break it to see what a failed rename leaves
        renamed = True
        step("confirm the renaming")
        confirm(place.parent)
    except OSError as error:
        if renamed:
            raise RegisterError(
                f"{record.document} {record.revision} stands in the register, but the disk did not confirm it: "
                f"{error.strerror or error}; run `specgen register verify`"
            ) from error
        if error.errno in _TAKEN and place.exists():
            raise TakenError(
                f"record {record.number} of {record.document} was taken meanwhile by someone else; look at "
                f"`specgen register show {record.document}` and try again"
            ) from error
        named = printable_name(str(error.filename or register))
        raise RegisterError(
            f"the register cannot be written to: {named}: {error.strerror or error}; nothing was changed"
        ) from error
    finally:
        if not renamed:
            shutil.rmtree(stage, ignore_errors=True)
            for folder in reversed(made):
                with suppress(OSError):
                    folder.rmdir()
    return Kept(record, place, sha256(held[RECORD]))


def histories(register: Path) -> list[History]:
    """Every document's chain, in the order of their folders. Raises RegisterError where there is no register to read."""
    names = _names(register)
    return [history(register, name) for name in names if not name.startswith(".")]


def history(register: Path, stem: str) -> History:
    """The chain of one document's folder. What cannot be read, and a link that does not hold, is a fault of it, never an exception."""
    folder = register / stem
    if folder.is_symlink() or not folder.is_dir():
        return History(stem, (), (f"{stem} is no folder of a document",))
    try:
        names = _names(folder)
    except RegisterError as reason:
        return History(stem, (), (str(reason),))
    kept: list[Kept] = []
    faults: list[str] = []
    for name in names:
        if name.startswith("."):
            continue
        if record_number(name) is None or (folder / name).is_symlink():
            faults.append(f"{stem}/{printable_name(name)} is no record's folder")
            continue
        try:
            data = read_bytes(folder / name / RECORD)
            kept.append(Kept(read_record(data, f"{stem}/{name}/{RECORD}"), folder / name, sha256(data)))
        except RegisterError as reason:
            faults.append(str(reason))
    kept.sort(key=lambda one: int(one.folder.name))
    document = kept[0].record.document if kept else stem
    return History(document, tuple(kept), (*faults, *link_faults(document, kept), *_head_faults(kept[-1:])))


def _head_faults(head: Sequence[Kept]) -> Iterator[str]:
    """No later record holds the hash of the newest one; the sums beside it do."""
    for kept in head:
        at = f"{kept.folder.parent.name}/{kept.folder.name}"
        try:
            listed = read_bytes(kept.folder / SUMS, SUMS_LIMIT).splitlines()
        except RegisterError:
            yield f"{at}/{SUMS} is missing" if not (kept.folder / SUMS).exists() else f"{at}/{SUMS} cannot be read"
            return
        if f"{kept.sha256}  {RECORD}".encode() not in listed:
            yield f"{at}: {RECORD} or {SUMS} was altered"


def history_of(register: Path, document: str) -> History:
    """The chain of a document by its number; empty where the register does not know it.

    Raises RegisterError where another document has the folder: numbers that differ in signs a folder name cannot hold, or
    in capitals, which not every disk tells apart.
    """
    stem = folder_of(register, document).name
    if not register.exists():
        return History(document)
    near = next((name for name in _names(register) if name.casefold() == stem.casefold()), None)
    if near is None:
        return History(document)
    found = history(register, near)
    if near != stem or (found.kept and found.document != document):
        raise RegisterError(
            f"this register does not know {printable_name(document)}, and {found.document} has the folder it would need"
        )
    return found


def read_kept(kept: Kept, name: str) -> bytes:
    """A file of a record, whole: its hash is that of the record. Raises RegisterError."""
    if name not in kept.record.files or not safe(name):
        raise RegisterError(f"record {kept.record.number} of {kept.record.document} holds no {printable_name(name)}")
    data = read_bytes(kept.folder / name, PDF_LIMIT)
    if (sha256(data), len(data)) != kept.record.files[name]:
        raise RegisterError(f"{name} of {kept.record.document} {kept.record.revision} was altered since it was issued")
    return data


def sums_text(hashes: Mapping[str, str]) -> bytes:
    """What `sha256sum -c` reads."""
    return "".join(f"{hashed}  {name}\n" for name, hashed in sorted(hashes.items())).encode("utf-8")


def _refuse_unreadable(held: Mapping[str, bytes]) -> None:
    """What is past the bounds of reading is not written. Raises RegisterError."""
    for name, data in held.items():
        if len(data) > PDF_LIMIT:
            raise RegisterError(f"{name} is larger than {PDF_LIMIT // 1024 // 1024} MiB; nothing was changed")
        if name in (MAKER_MODEL, CUSTOMER_MODEL, CERTIFICATE):
            refuse_large(data, name)


def _fill(stage: Path, held: Mapping[str, bytes], step: Step) -> None:
    folders = {stage}
    for name, data in held.items():
        path = stage / name
        step(f"write {name}")
        path.parent.mkdir(parents=True, exist_ok=True)
        folders.update(parent for parent in path.parents if parent.is_relative_to(stage))
        write_new(path, data)
    step("confirm the stage")
    for folder in sorted(folders, reverse=True):
        confirm(folder)


def _missing(folder: Path) -> list[Path]:
    """The folders on the way that are not there yet, the outermost first."""
    return [one for one in (*reversed(folder.parents), folder) if not one.exists()]


def _names(folder: Path) -> list[str]:
    named = printable_name(str(folder))
    try:
        with os.scandir(folder) as listing:
            names = sorted(entry.name for entry, _ in zip(listing, range(MOST_RECORDS), strict=False))
    except NotADirectoryError:
        raise RegisterError(f"{named} is a file, not the folder of a register") from None
    except FileNotFoundError:
        raise RegisterError(f"{named}: there is no register here; `specgen issue` begins one") from None
    except (OSError, ValueError) as error:
        raise RegisterError(f"{named} cannot be read: {getattr(error, 'strerror', None) or error}") from error
    return names
