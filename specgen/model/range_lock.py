"""What of a shared range was taken in, in the file `range.lock`: each record with its digest, one a line. Called by the rules on it and
by `specgen range`.

It holds the whole content, so that what is different can be shown without the range as it was.
"""

from __future__ import annotations

import hashlib
import json
import re
from collections.abc import Mapping
from dataclasses import dataclass
from typing import Any

from specgen.model.canonical import record_of
from specgen.model.field_types import ID_PATTERN
from specgen.model.parse import Loaded
from specgen.model.project import SCHEMA_VERSION
from specgen.model.spec import LIST_KINDS
from specgen.source.beside import NotRead
from specgen.source.bounded_json import NotJson, json_object, refuse_large

Records = Mapping[str, dict[str, Any]]
"""The content of records by their addresses, as in `products.primer-210`."""

_VERSION = "schema_version"
_KEY = re.compile(ID_PATTERN)
# steps below a record; one of the demo has seven
_DEEPEST = 40


class DamagedLock(Exception):  # noqa: N818  # reads as what happened
    """The file cannot be gone by; the text says why, to stand after its name."""


@dataclass(frozen=True, slots=True)
class Differing:
    """Addresses of the range's records: in another state than taken in, not taken in yet, and taken in but no longer in the range, or
    used by nothing here any more."""

    moved: tuple[str, ...]
    new: tuple[str, ...]
    gone: tuple[str, ...]
    unused: tuple[str, ...]

    def __bool__(self) -> bool:
        return bool(self.moved or self.new or self.gone or self.unused)

    @property
    def addresses(self) -> tuple[str, ...]:
        return (*self.moved, *self.new, *self.gone, *self.unused)


def taken_in(loaded: Loaded) -> Records | None:
    """What the file says; None where there is none. Raises DamagedLock."""
    held = loaded.range.lock if loaded.range is not None else None
    if held is None:
        return None
    if isinstance(held, NotRead):
        raise DamagedLock(f"cannot be read: {held.what}")
    return read_lock(held)


def read_lock(data: bytes) -> Records:
    """The records a file holds. Raises DamagedLock."""
    try:
        whole = json_object(data)
    except NotJson as refused:
        raise DamagedLock(str(refused)) from None
    version = whole.pop(_VERSION, None)
    if version != str(SCHEMA_VERSION):
        raise DamagedLock(f"is not of version {SCHEMA_VERSION} of the source format")
    records: dict[str, dict[str, Any]] = {}
    for address, held in whole.items():
        kind, _, key = address.partition(".")
        record = held.get("record") if isinstance(held, dict) else None
        if (
            kind not in LIST_KINDS
            or not _KEY.fullmatch(key)
            or not isinstance(record, dict)
            or record.get("id") != key
            or not _is_text(record)
        ):
            raise DamagedLock(f"holds something else than records at {address[:60]!r}")
        if held.get("sha256") != _digest(record):
            raise DamagedLock(f"was altered at {address}: the digest is that of something else")
        records[address] = record
    return records


def _is_text(value: object, deeper: int = _DEEPEST) -> bool:
    """True where every value is text, as in a source that was read, and none stands deeper than in one."""
    if isinstance(value, dict | list):
        inner = value.values() if isinstance(value, dict) else value
        return deeper > 0 and all(_is_text(held, deeper - 1) for held in inner)
    return isinstance(value, str)


def lock_text(records: Records) -> bytes:
    """The file of these records. Raises DamagedLock where they are more than can be read again."""
    lines = [
        f"{json.dumps(address)}: {_line({'sha256': _digest(record), 'record': record})},"
        for address, record in sorted(records.items())
    ]
    # the last line stays, so that two who add a record at the end do not meet in a comma
    text = "\n".join(["{", *lines, f'"{_VERSION}": "{SCHEMA_VERSION}"', "}", ""]).encode("utf-8")
    try:
        refuse_large(text)
    except NotJson as refused:
        raise DamagedLock(str(refused)) from None
    return text


def as_used(loaded: Loaded) -> Records:
    """The records of the range that are used, as they stand now; one that is not whole is left out."""
    if loaded.range is None or loaded.judged is None:
        return {}
    whole = {kind: dict(getattr(loaded.judged, kind).items()) for kind in LIST_KINDS}
    return {
        f"{kind}.{key}": record_of(whole[kind][key]) for kind, key in sorted(loaded.range.used) if key in whole[kind]
    }


def differing(loaded: Loaded, held: Records) -> Differing:
    """What is different between what is used now and what was taken in. A record with faults is not judged."""
    assert loaded.range is not None  # noqa: S101  # asked where there is one
    now = as_used(loaded)
    left = [address for address in held if tuple(address.split(".", 1)) not in loaded.range.used]
    there = {f"{kind}.{key}" for kind, keys in loaded.range.unused.items() for key in keys}
    return Differing(
        tuple(address for address, record in now.items() if address in held and held[address] != record),
        tuple(address for address in now if address not in held),
        tuple(address for address in left if address not in there),
        tuple(address for address in left if address in there),
    )


def _digest(record: Mapping[str, Any]) -> str:
    return hashlib.sha256(_line(record).encode("utf-8")).hexdigest()


def _line(value: Mapping[str, Any]) -> str:
    return json.dumps(value, sort_keys=True, ensure_ascii=False, separators=(",", ":"))
