"""One record of a document's chain: a revision issued, a withdrawal, or a holder's receipt. Called by `folder` and what reads it.

A record holds the SHA-256 of the record before it, so nothing before the newest can be changed or taken out unseen.
"""

from __future__ import annotations

import re
from collections.abc import Mapping
from dataclasses import dataclass, field
from typing import Any, Literal

from specgen.register.failure import RegisterError
from specgen.register.json_text import loosely, sha256, written
from specgen.register.names import safe

Kind = Literal["issue", "withdrawal", "receipt"]
KINDS: tuple[Kind, ...] = ("issue", "withdrawal", "receipt")
_HASH = re.compile(r"[0-9a-f]{64}")
_TIME = re.compile(r"[0-9]{4}-[0-9]{2}-[0-9]{2}T[0-9]{2}:[0-9]{2}:[0-9]{2}Z")
_TEXTS = ("document", "revision", "time", "reason", "by", "previous", "about", "subject", "title")
_ISSUE_TEXTS = ("certificate", "digest", "content", "next_review", "judged_on")
# the snapshot of reference data stands under the name the first records gave it
_MAPS, _LISTS = {"snapshot": "shelf", "engines": "engines", "contents": "contents"}, ("holders", "policy")
_KEYS = {"record", "kind", "number", "files", "references", *_TEXTS, *_ISSUE_TEXTS, *_MAPS.values(), *_LISTS}


@dataclass(frozen=True, slots=True)
class Reference:
    """Another controlled document this one rests on, as it stood when this one was issued.

    `revision` and `certificate` are empty where none was in force. `differs` is True where the sources already said
    something else than that revision.
    """

    document: str
    revision: str
    certificate: str
    differs: bool


@dataclass(frozen=True, slots=True)
class Record:
    """`by` is who withdrew or received; `about` is job or product; dates are ISO, times UTC; hashes SHA-256 in hex.

    `files` are those beside the record with hash and size; `engines` the versions that set the pages; `snapshot` the SHA-256 of
    each table and cited document it rests on.
    """

    kind: str
    number: int
    document: str
    revision: str
    time: str
    reason: str = ""
    by: str = ""
    previous: str = ""
    about: str = ""
    subject: str = ""
    title: str = ""
    certificate: str = ""
    digest: str = ""
    content: str = ""
    next_review: str = ""
    judged_on: str = ""
    files: Mapping[str, tuple[str, int]] = field(default_factory=dict)
    snapshot: Mapping[str, str] = field(default_factory=dict)
    engines: Mapping[str, str] = field(default_factory=dict)
    contents: Mapping[str, str] = field(default_factory=dict)
    references: tuple[Reference, ...] = ()
    holders: tuple[str, ...] = ()
    policy: tuple[str, ...] = ()

    @property
    def day(self) -> str:
        return self.time[:10]


def record_text(record: Record) -> bytes:
    value: dict[str, Any] = {"record": "1", "kind": record.kind, "number": record.number}
    value |= {name: getattr(record, name) for name in (*_TEXTS, *_ISSUE_TEXTS)}
    value["files"] = {name: {"sha256": hashed, "bytes": size} for name, (hashed, size) in record.files.items()}
    for name, key in _MAPS.items():
        value[key] = dict(getattr(record, name))
    value["references"] = [
        {"document": one.document, "revision": one.revision, "certificate": one.certificate, "differs": one.differs}
        for one in record.references
    ]
    value["holders"], value["policy"] = list(record.holders), list(record.policy)
    return written(value)


def read_record(data: bytes, named: str) -> Record:
    """The record in the bytes of a file. Raises RegisterError where they are none.

    How it is laid out is not looked at, for a day of the register is asked of thousands of records: `chain.all_faults` does.
    """
    value = loosely(data, named)
    try:
        files = {str(name): (_hashed(one["sha256"]), _whole(one["bytes"])) for name, one in value["files"].items()}
        fields: dict[str, Any] = {name: _text(value[name]) for name in (*_TEXTS, *_ISSUE_TEXTS)}
        for name, key in _MAPS.items():
            fields[name] = _map(value[key])
        for name in _LISTS:
            fields[name] = tuple(_text(one) for one in value[name])
        fields["references"] = tuple(_reference(one) for one in value["references"])
        record = Record(_one_of(value["kind"], KINDS), _whole(value["number"]), files=files, **fields)
    except (KeyError, TypeError, ValueError, AttributeError) as error:
        raise RegisterError(f"{named} is no record: {error} is missing or wrong") from None
    if not all(safe(name) for name in files):
        raise RegisterError(f"{named} names a file outside its folder")
    if not _TIME.fullmatch(record.time) or (record.previous and not _HASH.fullmatch(record.previous)):
        raise RegisterError(f"{named} has a time or a hash that is none")
    if set(value) != _KEYS or value["record"] != "1":
        raise RegisterError(f"{named} holds something this program does not know")
    return record


def file_hashes(files: Mapping[str, bytes]) -> dict[str, tuple[str, int]]:
    return {name: (sha256(data), len(data)) for name, data in files.items()}


def _reference(value: Any) -> Reference:
    document, revision, certificate = (_text(value[name]) for name in ("document", "revision", "certificate"))
    return Reference(document, revision, certificate, value["differs"] is True)


def _map(value: Any) -> dict[str, str]:
    if not all(type(one) is str for one in value.values()):
        raise ValueError("a text")
    held: dict[str, str] = value
    return held


def _text(value: object) -> str:
    if not isinstance(value, str):
        raise ValueError(value)
    return value


def _hashed(value: object) -> str:
    text = _text(value)
    if not _HASH.fullmatch(text):
        raise ValueError(text)
    return text


def _whole(value: object) -> int:
    if not isinstance(value, int) or isinstance(value, bool) or value < 0:
        raise ValueError(value)
    return value


def _one_of(value: object, known: tuple[str, ...]) -> str:
    if value not in known:
        raise ValueError(value)
    return str(value)
