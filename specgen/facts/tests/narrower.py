"""Whether one limit of a test accepts nothing that another does not, by the scale and the unit of the method. Called by comparing.

Ratings are held on the method's own scale, whichever way it runs: 4B is narrower than 3B, class 1 narrower than class 2.
"""

from __future__ import annotations

from specgen.facts.tests.values import Rank, amount, method_row, ranks
from specgen.model.test_value import Limit, Measured, Value, read_limit, read_result
from specgen.units.quantity import Quantity, Range


def as_limit(method: str, text: str) -> Limit | None:
    """A limit, or a value that no result may be worse than, as a limit; None for one in words, and where the method says no better."""
    try:
        return read_limit(text)
    except ValueError:
        pass
    try:
        value = read_result(text)
    except ValueError:
        return None
    if not isinstance(value, Measured):
        return Limit(alone=value)
    better = method_row(method)["direction"]
    if better not in {"higher", "lower"}:
        return None
    return Limit(low=value) if better == "higher" else Limit(high=value)


def narrower(method: str, standard: str, one: Limit, other: Limit) -> bool | None:
    """True where every result that `one` accepts is accepted by `other`; None where the two have no order."""
    if (mine := _range(method, one)) is not None and (theirs := _range(method, other)) is not None:
        return theirs.holds_all_of(mine) if mine.kind == theirs.kind else None
    worst, limit = _worst(method, standard, one), _worst(method, standard, other)
    if worst is None or limit is None:
        return None
    return worst.no_worse_than(limit)


def _range(method: str, limit: Limit) -> Range | None:
    """The limit as a range of quantities; None for ratings."""
    if limit.alone is not None:
        return None
    ends = [amount(method, value) if value is not None else None for value in (limit.low, limit.high)]
    stated = [end for end in ends if end is not None]
    if len(stated) < len(limit.stated):
        return None
    return Range(_kind(stated), *ends)


def _kind(stated: list[Quantity]) -> str:
    return stated[0].kind


def _worst(method: str, standard: str, limit: Limit) -> Rank | None:
    """The worst rating the limit accepts; None where it is on no scale, or on several."""
    found: list[Rank] = []
    for value in limit.stated:
        on = _one_scale(method, standard, value)
        if on is None:
            return None
        found.append(on)
    return max(found, key=lambda rank: rank.steps, default=None)


def _one_scale(method: str, standard: str, value: Value) -> Rank | None:
    on = ranks(method, value, standard)
    return on[0] if len(on) == 1 else None
