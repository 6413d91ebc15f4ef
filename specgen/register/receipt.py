"""A receipt: the newest record of every document, taken out of the register and kept elsewhere. Called by the commands.

A chain tells nothing of its own end. Whoever holds a receipt finds out when the newest record was taken out or rewritten since.
"""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence
from pathlib import Path

from specgen.register.failure import RegisterError
from specgen.register.folder import histories
from specgen.register.history import History
from specgen.register.json_text import parsed, read_bytes, written

_FIELDS = {"number", "record", "revision", "time"}


def receipt(register: Path) -> bytes:
    """The receipt of a register as it stands. Raises RegisterError for a damaged one."""
    found = histories(register)
    if faults := [fault for one in found for fault in one.faults]:
        raise RegisterError(f"no receipt is given for a damaged register: {faults[0]}")
    return receipt_text(found)


def is_receipt(file: Path) -> bool:
    """True for a file that an earlier receipt was written to."""
    try:
        _heads(read_bytes(file))
    except RegisterError:
        return False
    return True


def receipt_text(found: Sequence[History]) -> bytes:
    heads = {
        one.document: {
            "number": str(one.head.record.number),
            "record": one.head.sha256,
            "revision": one.head.record.revision,
            "time": one.head.record.time,
        }
        for one in found
        if one.head is not None
    }
    return written({"receipt": "1", "documents": heads})


def beyond(data: bytes, found: Sequence[History]) -> Iterator[str]:
    """What the receipt is too old to vouch for, a sentence a document: records added since, or a document begun since.

    Raises RegisterError for what is no receipt.
    """
    heads = _heads(data)
    for one in found:
        if one.head is None:
            continue
        head = heads.get(one.document)
        if head is None:
            yield f"the receipt does not know {one.document}: a record taken out of it since would not show"
        elif int(head["number"]) < one.head.record.number:
            yield (
                f"the receipt knows {one.document} up to record {head['number']} ({head['time']}): "
                "a later record taken out since would not show"
            )


def lost_since(data: bytes, found: Sequence[History]) -> Iterator[str]:
    """What the receipt knows and the register does not hold any more. Raises RegisterError for what is no receipt."""
    held = {one.document: {str(kept.record.number): kept.sha256 for kept in one.kept} for one in found}
    for document, head in _heads(data).items():
        at = held.get(document, {}).get(head["number"])
        what = f"record {head['number']} of {document} ({head['revision']}, {head['time']})"
        if at is None:
            yield f"{what} is gone; the receipt knows it"
        elif at != head["record"]:
            yield f"{what} is not the one the receipt knows"


def _heads(data: bytes) -> dict[str, dict[str, str]]:
    value = parsed(data, "the receipt")
    heads = value.get("documents")
    if set(value) != {"receipt", "documents"} or not isinstance(heads, dict):
        raise RegisterError("this is no receipt of a register")
    for head in heads.values():
        if (
            not isinstance(head, dict)
            or set(head) != _FIELDS
            or not all(isinstance(one, str) for one in head.values())
            or not re.fullmatch(r"[1-9][0-9]{0,5}", head["number"])
        ):
            raise RegisterError("this is no receipt of a register")
    return heads
