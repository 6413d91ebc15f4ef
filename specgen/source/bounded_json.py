"""JSON that may be hostile: bounded before it is parsed. Called by the register and by the reader of what was taken in of a range."""

from __future__ import annotations

import json
from typing import Any

JSON_LIMIT = 16 * 1024 * 1024
"""Bytes; a record or model past it is none of ours: one of the demo is a five-hundredth of it."""
VALUES_LIMIT = 500_000
"""Values of one text, counted before it is read by the signs that part them: each takes some 200 bytes once it is."""


class NotJson(Exception):  # noqa: N818  # reads as what happened
    """The bytes hold no JSON object of ours; the text goes on from the name of the file."""


def refuse_large(data: bytes) -> None:
    """Raises NotJson for a text that would take more memory than any of ours; what is written is held to it too."""
    if len(data) > JSON_LIMIT:
        raise NotJson(f"is larger than {JSON_LIMIT // 1024 // 1024} MiB")
    if sum(data.count(sign) for sign in (b",", b"[", b"{")) > VALUES_LIMIT:
        raise NotJson(f"holds more than {VALUES_LIMIT:,} values")


def json_object(data: bytes) -> dict[str, Any]:
    """The object the bytes hold, however it is laid out. Raises NotJson for anything else."""
    refuse_large(data)
    try:
        value = json.loads(data.decode("utf-8"))
    except UnicodeDecodeError:
        raise NotJson("is not UTF-8 text") from None
    except RecursionError:
        raise NotJson("is not whole JSON: nested too deeply") from None
    except ValueError as error:
        # what is no fault of JSON is a whole number of more digits than Python reads
        raise NotJson(f"is not whole JSON: {getattr(error, 'msg', 'a number is too long')}") from None
    if not isinstance(value, dict):
        raise NotJson("does not hold an object")
    return value
