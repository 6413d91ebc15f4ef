"""A short name for one change by its content, so that a person's decision on it is found again. Called by `compare`.

It holds the address and what stands there on both sides, of a reference all that it leads to, and nothing of file, line or
date: the same change asked again, in another folder or a later run, has the same fingerprint; another value has another.
"""

from __future__ import annotations

import hashlib
import json
from collections.abc import Sequence
from typing import Any

from specgen.comparison.changes import Difference
from specgen.model.canonical import written
from specgen.model.node import Node
from specgen.model.walk import leaves

_LENGTH = 16
"""Digits of the SHA-256: 64 bits, so that two changes of one project do not meet by chance."""


def fingerprint(fact: Difference, reached: Sequence[str] = ()) -> str:
    """Sixteen hexadecimal digits. `reached` are digests of what a reference leads to on both sides."""
    whole = [
        fact.kind.value,
        fact.polarity.value,
        list(fact.old_path),
        list(fact.path),
        _text(fact.old),
        _text(fact.new),
    ]
    whole += reached
    return hashlib.sha256(json.dumps(whole, ensure_ascii=False).encode()).hexdigest()[:_LENGTH]


def _text(value: Any) -> Any:
    if value is None:
        return None
    if isinstance(value, Node):
        return [[".".join(path), written(held)] for path, held, _ in leaves(value)]
    return written(value)
