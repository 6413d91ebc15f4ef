"""JSON as the register writes it (one text for one content) and reads it (bounded, strict). Called by every module of this floor."""

from __future__ import annotations

import hashlib
import json
import os
import stat
from pathlib import Path
from typing import Any

from specgen.register.failure import RegisterError
from specgen.source import bounded_json
from specgen.source.bounded_json import JSON_LIMIT, NotJson, json_object
from specgen.source.characters import printable_name

PDF_LIMIT = 64 * 1024 * 1024


def written(value: Any) -> bytes:
    """UTF-8, keys sorted, one entry a line, a line end at the end."""
    return (json.dumps(value, sort_keys=True, ensure_ascii=False, indent=1) + "\n").encode("utf-8")


def sha256(data: bytes) -> str:
    return hashlib.sha256(data).hexdigest()


def read_bytes(path: Path, limit: int = JSON_LIMIT) -> bytes:
    """The bytes of an ordinary file, not through a link. Raises RegisterError."""
    named = printable_name(str(path))
    try:
        found = os.lstat(path)
        if not stat.S_ISREG(found.st_mode):
            raise RegisterError(f"{named} is not an ordinary file")
        with path.open("rb") as stream:
            data = stream.read(limit + 1)
    except (OSError, ValueError) as error:
        raise RegisterError(f"{named} cannot be read: {getattr(error, 'strerror', None) or error}") from error
    if len(data) > limit:
        raise RegisterError(f"{named} is larger than {limit // 1024 // 1024} MiB")
    return data


def parsed(data: bytes, named: str) -> dict[str, Any]:
    """The object the bytes hold. Raises RegisterError for anything else, and for text this program would write otherwise."""
    value = loosely(data, named)
    try:
        again = written(value)
    except (ValueError, RecursionError):
        again = b""
    if again != data:
        # what differs is a key given twice, a changed blank, another spelling of a sign: nothing the register writes
        raise RegisterError(f"{named} is not as the register writes it")
    return value


def refuse_large(data: bytes, named: str) -> None:
    """Raises RegisterError for a text that would take more memory than any of ours; what is written is held to it too."""
    try:
        bounded_json.refuse_large(data)
    except NotJson as refused:
        raise RegisterError(f"{named} {refused}") from None


def loosely(data: bytes, named: str) -> dict[str, Any]:
    """The object the bytes hold, however it is laid out: four times as fast. Raises RegisterError for anything else."""
    try:
        return json_object(data)
    except NotJson as refused:
        raise RegisterError(f"{named} {refused}") from None
