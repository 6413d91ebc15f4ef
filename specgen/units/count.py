"""A number of things that may be left open between two: `2` coats, `2..3`, `min 2`. Called by the model and what reads it."""

from __future__ import annotations

import re
from dataclasses import dataclass

from specgen.units.display import AT_LEAST, BETWEEN
from specgen.units.locale import ENGLISH, Locale
from specgen.units.quantity import QuantityError

_WHOLE = r"0|[1-9][0-9]{0,8}"
_COUNT = re.compile(rf"(?P<one>{_WHOLE})|(?P<low>{_WHOLE})\.\.(?P<high>{_WHOLE})|min (?P<least>{_WHOLE})", re.ASCII)


@dataclass(frozen=True, slots=True)
class Count:
    """From `low` to `high`, both included; the same for one number, `high` None where there is no upper limit."""

    low: int
    high: int | None

    @property
    def one(self) -> int | None:
        """The number, where only one is accepted."""
        return self.low if self.low == self.high else None

    def holds_all_of(self, other: Count) -> bool:
        """True where every number that `other` accepts is accepted here."""
        below = self.high is None or (other.high is not None and other.high <= self.high)
        return self.low <= other.low and below

    def __str__(self) -> str:
        if self.high is None:
            return f"min {self.low}"
        return str(self.low) if self.low == self.high else f"{self.low}..{self.high}"


def parse_count(text: str) -> Count:
    """`2`, `2..3` or `min 2`. Raises QuantityError."""
    found = _COUNT.fullmatch(text)
    if not found:
        raise QuantityError(f"'{text[:40]}' is not a whole number", "write digits only, as in 4, 2..3 or min 2")
    if found["low"]:
        low, high = int(found["low"]), int(found["high"])
        if low > high:
            raise QuantityError(f"the range {text} runs backwards", "write the lower number first")
        return Count(low, high)
    return Count(int(found["least"]), None) if found["least"] else Count(int(found["one"]), int(found["one"]))


def show_count(value: Count, language: Locale = ENGLISH) -> str:
    """`2`, `2 to 3` or `at least 2`."""
    if value.high is None:
        return language(AT_LEAST).format(value.low)
    return str(value.low) if value.low == value.high else language(BETWEEN).format(low=value.low, high=value.high)
