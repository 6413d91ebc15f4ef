"""What the formulas of the trade are given: a figure together with where it stands and whom it may be shown to.

Called by the modules of `trade`, and by rules, plan and views that hand figures of a specification to them.
"""

from __future__ import annotations

from fractions import Fraction
from functools import cache
from typing import NamedTuple

from specgen.standards.tables import Row, table
from specgen.trade.working import Audience, Input, Working
from specgen.units.kinds import KINDS
from specgen.units.quantity import Quantity

_NOTHING = Fraction(0)
# A share of a whole and a percentage on top of it are written alike; a humidity is neither.
_PERCENTAGES = frozenset({"share", "percentage"})


class Given(NamedTuple):
    """A value and its origin: a path in the sources or `table:NAME`."""

    value: Quantity | Fraction
    origin: str = ""
    audience: Audience = "customer"

    @property
    def quantity(self) -> Quantity:
        """The value where it carries a unit. Raises TypeError for a bare number."""
        if not isinstance(self.value, Quantity):
            raise TypeError(f"the figure at {self.origin} is a bare number")
        return self.value


Source = Given | Working | Quantity | Fraction | int
"""What a formula takes: a value with its origin, the result of another working, or a bare value."""


def take(symbol: str, name: str, value: Source, kind: str = "", unit: str = "") -> Input:
    """The value as an input counted in `unit`; the result of a working enters unrounded.

    Raises TypeError where it is not of `kind` (a bare number where `kind` is empty): that is a slip in the calling
    code.
    """
    match value:
        case Working():
            given = Given(value.result, f"working:{value.id}")
        case Given():
            given = value
        case int():
            given = Given(Fraction(value))
        case _:
            given = Given(value)
    found = given.value.kind if isinstance(given.value, Quantity) else ""
    alike = found == kind or (found in _PERCENTAGES and kind in _PERCENTAGES)
    if not alike or (kind and unit not in KINDS[kind].units):
        raise TypeError(
            f"{name} is a {found or 'bare number'}, where a {kind or 'bare number'} in {unit or 'no unit'} is taken"
        )
    return Input(symbol, name, given.value, unit, given.origin, given.audience)


def amount(value: Source) -> Quantity | Fraction:
    """The value itself, without its origin."""
    match value:
        case Working():
            return value.result
        case Given():
            return value.value
        case int():
            return Fraction(value)
        case _:
            return value


def rounding_of(value: Quantity) -> Fraction:
    """How far a printed figure may lie from what it was rounded from: half a unit of its last digit, in its own unit.

    A computed quantity has no digits of an author and is exact.
    """
    _, _, decimals = value.digits.partition(".")
    return _half_a_unit(len(decimals)) if value.digits else _NOTHING


@cache
def _half_a_unit(decimals: int) -> Fraction:
    return Fraction(1, 2 * 10**decimals)


def from_table(name: str, row: Row, column: str, kind: str = "", unit: str = "") -> Given:
    """A cell of a published table as a figure: a quantity of `kind` in `unit`, or a bare number.

    Raises KeyError for a column the table does not have, ValueError for a cell that is not a number.
    """
    text = row[column]
    number = Fraction(text)
    return Given(Quantity.of(kind, number, unit, text) if kind else number, f"table:{table(name).name}")


def take_cell(symbol: str, name: str, of: str, row: Row, column: str, kind: str = "", unit: str = "") -> Input:
    """A cell of the table `of` as an input. Raises as `from_table`."""
    return take(symbol, name, from_table(of, row, column, kind, unit), kind, unit)
