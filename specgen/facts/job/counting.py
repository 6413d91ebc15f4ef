"""What a counting rule makes of the limits of a criterion: which spots, means and single readings it accepts.

The one place where the tables of the rules are applied to stated limits. Asked by the inspection plan, by the rule that holds a
criterion against the film, and by the comparison, which tries sets of readings on it.
"""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction

from specgen.model.acceptance import AcceptanceRule, Criterion, LowReadings
from specgen.standards.citations import Basis
from specgen.standards.tables import Table, table
from specgen.units.quantity import Quantity
from specgen.units.rounding import plain_text

PERCENT = 100
_SINGLE = "single reading as a share of the nominal film, at least"
_ENOUGH = "readings at or above the nominal film, at least"
_FEWER = "readings between that and the nominal film, fewer than"
_TIMES = "maximum as a multiple of the nominal film, at most"
_TABLES = {
    AcceptanceRule.PA_2: "sspc_pa_2_levels",
    AcceptanceRule.ISO_19840: "iso_19840_limits",
    AcceptanceRule.NINETY_TEN: "ninety_ten_limits",
    AcceptanceRule.EIGHTY_TWENTY: "eighty_twenty_limits",
}
COUNTED_FROM_NOMINAL = frozenset(_TABLES) - {AcceptanceRule.PA_2}


@dataclass(frozen=True, slots=True, kw_only=True)
class Counting:
    """What is accepted; None where the rule does not ask. Of all readings `below_most` may lie below `counted_from`, as a share,
    and fewer than that where `fewer`.

    `tripled`: no maximum is stated, and the rule takes a multiple of the nominal film. `unconfirmed` is the basis of a figure that is
    not confirmed.
    """

    single_min: Quantity | None = None
    single_max: Quantity | None = None
    spot_min: Quantity | None = None
    spot_max: Quantity | None = None
    mean_min: Quantity | None = None
    mean_max: Quantity | None = None
    counted_from: Quantity | None = None
    below_most: Fraction = Fraction(1)
    fewer: bool = False
    tripled: bool = False
    unconfirmed: Basis | None = None


def counting(criterion: Criterion) -> Counting | None:
    """What the rule of a criterion accepts; None where words decide, or where it leaves out what its rule counts from."""
    if criterion.rule is AcceptanceRule.PA_2:
        return _pa_2(criterion)
    if criterion.rule in COUNTED_FROM_NOMINAL and criterion.nominal is not None:
        return _from_nominal(criterion.rule, criterion, criterion.nominal)
    return None


def counting_table(rule: AcceptanceRule | None) -> Table | None:
    """The table of a rule; None for an own rule, which words decide."""
    return table(_TABLES[rule]) if rule in _TABLES else None


def most_of_nominal(nominal: Quantity) -> Quantity:
    """The maximum under ISO 19840 where none is stated."""
    return share_of(nominal, Fraction(table("iso_19840_limits").row("what", _TIMES)["value"]) * PERCENT)


def share_of(film: Quantity, percent: Fraction) -> Quantity:
    """So many percent of a film, in its unit, with every digit."""
    number = film.number * percent / PERCENT
    return Quantity.of(film.kind, number, film.unit, plain_text(number))


def _pa_2(criterion: Criterion) -> Counting | None:
    levels = {row["level"]: row for row in table("sspc_pa_2_levels").rows}
    row = levels.get(str(criterion.level))
    if row is None or (criterion.min is None and criterion.max is None):
        return None
    least, most = criterion.min, criterion.max
    # at the level without a most spot the area has no most either (from memory)
    free = not row["spot_max_pct"]
    written = criterion.spot_min is not None and (free or criterion.spot_max is not None)
    spots = (
        share_of(least, Fraction(row["spot_min_pct"])) if least is not None else None,
        share_of(most, Fraction(row["spot_max_pct"])) if most is not None and not free else None,
    )
    return Counting(
        spot_min=_higher(spots[0], criterion.spot_min),
        spot_max=_lower(spots[1], criterion.spot_max),
        mean_min=_higher(least, criterion.area_min),
        mean_max=_lower(None if free else most, criterion.area_max),
        unconfirmed=table("sspc_pa_2_levels").basis if row["seen"] != "yes" and not written else None,
    )


def _from_nominal(rule: AcceptanceRule, criterion: Criterion, nominal: Quantity) -> Counting:
    held = table(_TABLES[rule])
    single = share_of(nominal, Fraction(held.row("what", _SINGLE)["value"]))
    iso = rule is AcceptanceRule.ISO_19840
    share = Fraction(held.row("what", _FEWER if iso else _ENOUGH)["value"])
    tripled = iso and criterion.max is None
    return Counting(
        single_min=_higher(single, criterion.min),
        single_max=most_of_nominal(nominal) if tripled else criterion.max,
        mean_min=nominal if iso else None,
        counted_from=nominal,
        below_most=(share if iso else PERCENT - share) / PERCENT,
        fewer=iso and criterion.low_readings is not LowReadings.AT_MOST,
        tripled=tripled,
        unconfirmed=None if held.basis.confirmed else held.basis,
    )


def _higher(one: Quantity | None, other: Quantity | None) -> Quantity | None:
    return max((value for value in (one, other) if value is not None), default=None)


def _lower(one: Quantity | None, other: Quantity | None) -> Quantity | None:
    return min((value for value in (one, other) if value is not None), default=None)
