"""Where things stand in a register folder, and which names may be used in it. Called by every module of this floor.

`register/MS-001/0002/` holds the second record of the document MS-001. The folder has the number of the record and not
its revision: two people who issue, withdraw or acknowledge at once meet in one name, on one disk as in one git branch.
"""

from __future__ import annotations

import re
from pathlib import Path

from specgen.model.file_names import file_stem, name_fault
from specgen.register.failure import RegisterError
from specgen.source.characters import printable_name

REGISTER = "register"
APPROVALS = "approvals"
ALLOWED_SIGNERS = "allowed_signers"
RECORD = "record.json"
SUMS = "SHA256SUMS"
CERTIFICATE = "certificate.json"
SOURCES = "sources"
# of a folder, and of an as-built record: files of readings
READINGS = "readings"
# of a record: copies of what stands in the shared range
RANGE_SOURCES = "range_sources"
MAKER_MODEL = "model.maker.json"
CUSTOMER_MODEL = "model.customer.json"

_NUMBERED = re.compile(r"[0-9]{4,6}")
# steps parted by single slashes, none of which begins with a full stop or a blank
_STEP = r'[^\x00-\x1f\x7f<>:"\\|?*/. ][^\x00-\x1f\x7f<>:"\\|?*/]*'
_SAFE = re.compile(rf"{_STEP}(/{_STEP})*")
_LONGEST = 400


def stem_of(document: str) -> str:
    """The folder name of a document number. Raises RegisterError where none can be made of it."""
    stem = file_stem(document)
    if not stem or name_fault(stem):
        raise RegisterError(f"{printable_name(document) or 'an empty text'} cannot be a document number")
    return stem


def folder_of(register: Path, document: str) -> Path:
    return register / stem_of(document)


def record_folder(number: int) -> str:
    return f"{number:04d}"


def record_number(name: str) -> int | None:
    """The number a folder name stands for, None for any other name."""
    if not _NUMBERED.fullmatch(name):
        return None
    number = int(name)
    return number if number > 0 and record_folder(number) == name else None


def safe(name: str) -> bool:
    """True for the name of a file within a record's folder: relative, no step up, no hidden step, no sign a disk refuses."""
    return len(name) <= _LONGEST and _SAFE.fullmatch(name) is not None
