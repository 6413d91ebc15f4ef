"""When two values are one: what an author may write otherwise without changing anything. Called by `differences` and `effects`."""

from __future__ import annotations

from fractions import Fraction
from typing import Any

from specgen.model.canonical import written


def is_list(value: Any) -> bool:
    """True for a leaf that lists values; a mixing ratio is one value."""
    return isinstance(value, tuple) and not all(isinstance(part, Fraction) for part in value)


def members(value: Any) -> frozenset[str]:
    """What a leaf lists, whatever its order; a single value lists itself, nothing lists nothing."""
    if value is None or value == ():
        return frozenset()
    return frozenset(str(written(part)) for part in value) if is_list(value) else frozenset({str(written(value))})


def written_alike(old: Any, new: Any) -> bool:
    """True where the two sides say the same in the same unit; blanks, line ends and the order of a list do not count."""
    if old is None or new is None:
        return old is None and new is None
    if is_list(old) or is_list(new) or old == () or new == ():
        return members(old) == members(new)
    if isinstance(old, str) and isinstance(new, str):
        return old == new or old.split() == new.split()
    return type(old) is type(new) and (old is new or written(old) == written(new))
