"""Whether a test result is one that is usual for its method and generic type, and what else its number may mean.

A value outside is never corrected: every reading of the bare number that would be usual is named, and the author asked. What the
instrument itself ends at is a ceiling; all else is usual at best, from practice or memory.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from fractions import Fraction
from typing import NamedTuple

from specgen.facts.tests.values import amount, method_row
from specgen.model.test_value import Measured
from specgen.standards.citations import Citation
from specgen.standards.reads import remembered
from specgen.standards.tables import Row, table
from specgen.units.kinds import KINDS
from specgen.units.rounding import significant

_NO_WHERE: Mapping[str, str] = {}


class Doubt(NamedTuple):
    """A result that is unusual, or beyond what its instrument can show.

    `bounds` says what is usual, `readings` what the bare number would mean in other units where that is usual, `read_as` those
    units alone. `below` is True for a value under the lower bound.
    """

    value: str
    bounds: str
    where: str
    ceiling: bool
    below: bool
    readings: tuple[str, ...]
    read_as: tuple[str, ...]
    source: Citation


def plausible(
    method: str, values: Sequence[Measured], family: str = "", where: Mapping[str, str] = _NO_WHERE
) -> Doubt | None:
    """None where every value (one, or both ends of a range) is usual; the first doubt otherwise, a ceiling before the rest.

    `where` states on what and how was measured, as in substrate=metal or angle=60; a row whose condition it does not state is
    left out. A row of the family goes before the usual one of the method.
    """
    of_method = [(row, source) for row, source in _rows("test_envelopes", method) if _counts(row, where)]
    units = {value.unit for value in values}
    of_method.sort(key=lambda pair: pair[0]["unit"] not in units)
    ceilings = [(row, source) for row, source in of_method if row["what"] == "ceiling"]
    usual = [(row, source) for row, source in of_method if row["what"] == "usual"]
    of_family = [
        (row, source)
        for row, source in _rows("test_envelopes_family", method)
        if row["family"] == family and _counts(row, where)
    ]
    for row, source in (*ceilings, *(of_family or usual)):
        for value in values:
            outside = _outside(method, value, row)
            if outside is not None:
                limits = of_family or usual
                readings = _readings(method, values, [row for row, _ in (*ceilings, *limits)])
                return Doubt(
                    _as_written(values),
                    _bounds(row),
                    row.get("where", ""),
                    ceiling=row.get("what") == "ceiling",
                    below=outside < 0,
                    readings=tuple(full for _, full in readings),
                    read_as=tuple(name for name, _ in readings),
                    source=source,
                )
    return None


@remembered
def _rows(name: str, method: str) -> tuple[tuple[Row, Citation], ...]:
    """The rows of a method, each with on whose word it stands."""
    return tuple((row, table(name).row_citation(row)) for row in table(name).rows if row["method"] == method)


def _counts(row: Row, where: Mapping[str, str]) -> bool:
    if not row["condition"]:
        return True
    name, _, wanted = row["condition"].partition("=")
    return where.get(name) == wanted


def _outside(method: str, value: Measured, row: Row) -> int | None:
    """-1 below the row, 1 above it, None inside or where the row is in a unit the value cannot be turned into."""
    number = in_unit(method, value, row["unit"])
    if number is None:
        return None
    if row["least"] and number < Fraction(row["least"]):
        return -1
    return 1 if row["most"] and number > Fraction(row["most"]) else None


def in_unit(method: str, value: Measured, unit: str) -> Fraction | None:
    """The value in a unit: by the dimension, or by what one reading of the instrument is (1.4 s for a swing of König's)."""
    quantity = amount(method, value)
    if quantity is None:
        return None
    if unit in KINDS[quantity.kind].units:
        return quantity.to(unit)
    for row in table("test_readings").rows:
        if (row["method"], row["of"], row["unit"]) == (method, value.unit, unit):
            return value.number * Fraction(row["factor"])
    return None


def _readings(method: str, values: Sequence[Measured], limits: Sequence[Row]) -> list[tuple[str, str]]:
    """Each other meaning of the bare numbers under which all of them are usual."""
    own = {value.unit for value in values}
    found = []
    for row in table("test_readings").rows:
        if row["method"] != method or row["of"] in own:
            continue
        meant = [Measured(value.number * Fraction(row["factor"]), row["unit"], value.digits) for value in values]
        if all(_outside(method, value, limit) is None for value in meant for limit in limits):
            told = _figures([f"{significant(value.number):f}" for value in meant])
            full = f"{_figures([value.digits for value in values])} {row['reading']} ({told} {row['unit']})"
            found.append((row["reading"], full))
    return found


def _figures(digits: Sequence[str]) -> str:
    return " to ".join(dict.fromkeys(digits))


def _as_written(values: Sequence[Measured]) -> str:
    return _figures([value.digits for value in values[:-1]] + [str(values[-1])])


def _bounds(row: Row) -> str:
    ends = [Measured(Fraction(end), row["unit"], end) for end in (row["least"], row["most"]) if end]
    if len(ends) > 1:
        return _as_written(ends)
    return f"{'at least' if row['least'] else 'at most'} {ends[0]}"


def quantity_of(method: str) -> str:
    """`pull-off strength`: what a method measures, as a sentence names it."""
    return str(method_row(method)["quantity"])


def said(doubt: Doubt, method: str, family: str = "") -> str:
    """`pull-off strength of 150 psi lies below what is usual, 3 to 25 MPa for epoxy_2k; the number would be usual as bar`."""
    side = "below" if doubt.below else "above"
    if doubt.ceiling:
        told = f"{quantity_of(method)} of {doubt.value} is beyond what any film can reach: the {doubt.where}"
    else:
        where = f" {doubt.where}" if doubt.where else ""
        told = f"{quantity_of(method)} of {doubt.value} lies {side} what is usual{where}, {doubt.bounds}"
        told += f" for {family}" if family and not doubt.where else ""
    if doubt.read_as:
        last = f"{', '.join(doubt.read_as[:-1])} or {doubt.read_as[-1]}" if doubt.read_as[1:] else doubt.read_as[0]
        told += f"; the number would be usual as {last}"
    return told
