"""A receipt: the newest record of every document, taken out of the register and kept elsewhere. Called by the commands.

A chain tells nothing of its own end. Whoever holds a receipt finds out when the newest record was taken out or rewritten since.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from specgen.register.failure import RegisterError
from specgen.register.folder import History
from specgen.register.json_text import parsed, written

_FIELDS = {"number", "record", "revision", "time"}


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


def lost_since(data: bytes, found: Sequence[History]) -> Iterator[str]:
    """What the receipt knows and the register does not hold any more. Raises RegisterError for what is no receipt."""
    value = parsed(data, "the receipt")
    heads = value.get("documents")
    if set(value) != {"receipt", "documents"} or not isinstance(heads, dict):
        raise RegisterError("this is no receipt of a register")
    held = {one.document: {str(kept.record.number): kept.sha256 for kept in one.kept} for one in found}
    for document, head in heads.items():
        if not isinstance(head, dict) or set(head) != _FIELDS or not all(isinstance(one, str) for one in head.values()):
            raise RegisterError("this is no receipt of a register")
        at = held.get(document, {}).get(head["number"])
        what = f"record {head['number']} of {document} ({head['revision']}, {head['time']})"
        if at is None:
            yield f"{what} is gone; the receipt knows it"
        elif at != head["record"]:
            yield f"{what} is not the one the receipt knows"
