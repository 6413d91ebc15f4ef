"""Limits of VOC and reactivity by jurisdiction, category and day.

A category whose limit was not read, or a day for which no table was read, cannot be judged. Called by the rules on VOC
and by the data sheet.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from datetime import date
from fractions import Fraction
from typing import Literal, NamedTuple

from specgen.standards.citations import Citation
from specgen.standards.tables import Row, table
from specgen.trade.known import NotKnown
from specgen.units.quantity import Quantity
from specgen.units.rounding import plain_text

_EU, _EU_PAINTS = "voc_limits_eu", "voc_limits_eu_paints"
_PART_A = "A/"
_REACTIVITY = {"US-CA": "reactivity_limits_california", "US": "reactivity_limits_us"}


class VocLimit(NamedTuple):
    """A limit in g/L, or in g of ozone on g as a bare number, with the days it holds for (empty where open)."""

    category: str
    name: str
    limit: Quantity | Fraction
    unit: str
    since: str
    until: str
    source: Citation
    water_subtracted: bool = False

    def printed(self) -> str:
        """The limit with its unit, as in `0.85 g O3/g`; a quantity as its table writes it."""
        return f"{plain_text(self.limit)} {self.unit}" if isinstance(self.limit, Fraction) else str(self.limit)


def voc_limit_eu(category: str, on: date, *, waterborne: bool = False) -> VocLimit | NotKnown:
    """The limit of a subcategory of Directive 2004/42/EC: of annex II B, as in "e" or "c(i)", or of II A, as in "j" or "A/d".

    An aerosol is always "e". The limits of II A are from memory.
    """
    row = next((row for row in table(_EU).rows if row["id"] == category), None)
    if row is None:
        return _limit_of_paint(category, on, waterborne=waterborne)
    if on.isoformat() < row["from"]:
        return NotKnown("VOC limit, EU", f"no limit is known before {row['from']}", ("limit",))
    limit = Quantity.of("voc_content", Fraction(row["limit"]), "g/L", row["limit"])
    subtracted = row["water_subtracted"] == "yes"
    return VocLimit(category, row["name"], limit, "g/L", row["from"], "", table(_EU).citation, subtracted)


def _limit_of_paint(category: str, on: date, *, waterborne: bool) -> VocLimit | NotKnown:
    row = next((row for row in table(_EU_PAINTS).rows if row["id"] == category.removeprefix(_PART_A)), None)
    if row is None:
        return NotKnown("VOC limit, EU", f"{category} is not a subcategory of annex II", ("subcategory",))
    if on.isoformat() < row["from"]:
        return NotKnown("VOC limit, EU", f"no limit is known before {row['from']}", ("limit",))
    digits = row["waterborne" if waterborne else "solvent_borne"]
    limit = Quantity.of("voc_content", Fraction(digits), "g/L", digits)
    return VocLimit(category, row["name"], limit, "g/L", row["from"], "", table(_EU_PAINTS).citation)


def voc_limit_us_refinish(category: str) -> VocLimit | NotKnown:
    """The limit in lb/gal of an automobile refinish coating that is not an aerosol, less water and exempt solvents.

    The figures in lb/gal were read in a copy of the table; those in g/L are from memory and are not used.
    """
    name = "voc_limits_us_refinish"
    row = next((row for row in table(name).rows if row["id"] == category), None)
    if row is None:
        return NotKnown("VOC limit, US", f"{category} is not a category of subpart B", ("category",))
    citation = table(name).citation
    limit = Quantity.of("voc_content", Fraction(row["limit_lb_gal"]), "lb/gal", row["limit_lb_gal"])
    return VocLimit(category, row["category"], limit, "lb/gal", "", "", citation, water_subtracted=True)


def reactivity_limit(jurisdiction: Literal["US-CA", "US"], category: str, on: date) -> VocLimit | NotKnown:
    """The limit of an aerosol coating category on a day, in g of ozone on g.

    The federal limits of 2008 are from memory, and nothing is known from 2027-01-17 on.
    """
    what, name = f"reactivity limit, {jurisdiction}", _REACTIVITY[jurisdiction]
    rows = [row for row in table(name).rows if row["id"] == category]
    if not rows:
        return NotKnown(what, f"{category} is not a category of the table", ("category",))
    held = [row for row in rows if _holds(row, on.isoformat())]
    if not held or not held[0]["limit"]:
        why = f"the limit of {rows[0]['category']} on {on.isoformat()} was not read"
        return NotKnown(what, why, ("limit",), (), table(name).row_citation(rows[0]))
    row = held[0]
    source = table(name).row_citation(row)
    return VocLimit(category, row["category"], Fraction(row["limit"]), "g O3/g", row["from"], row["until"], source)


def lowest_limit(limits: Sequence[VocLimit | NotKnown]) -> VocLimit | NotKnown:
    """The limit that holds where several uses are claimed, 40 CFR 59.504(c).

    One that cannot be judged might be the lowest, so then none can. Raises ValueError for no limit at all.
    """
    if open_limit := next((entry for entry in limits if isinstance(entry, NotKnown)), None):
        return open_limit
    return min(_known(limits), key=lambda entry: entry.limit if isinstance(entry.limit, Fraction) else entry.limit.base)


def _known(limits: Iterable[VocLimit | NotKnown]) -> list[VocLimit]:
    return [entry for entry in limits if isinstance(entry, VocLimit)]


def _holds(row: Row, day: str) -> bool:
    return (not row["from"] or row["from"] <= day) and (not row["until"] or day <= row["until"])
