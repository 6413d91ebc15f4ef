"""What a counting rule makes of the limits of a criterion: which spots, means and single readings it accepts.

The one place where the tables of the rules are applied to stated limits. Asked by the inspection plan, by the rule that holds a
criterion against the film, and by the comparison, which tries sets of readings on it.
"""

from __future__ import annotations

import re
from fractions import Fraction

from specgen.model.acceptance import AcceptanceRule, Criterion, Each, LowReadings
from specgen.standards.citations import Basis
from specgen.standards.tables import Row, Table, table
from specgen.trade.film_acceptance import Counting
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


def counting(criterion: Criterion) -> Counting | None:
    """What the rule of a criterion accepts; None where words decide, or where it leaves out what its rule counts from."""
    if criterion.rule is AcceptanceRule.PA_2:
        return _pa_2(criterion)
    if criterion.rule in COUNTED_FROM_NOMINAL and criterion.nominal is not None:
        return _from_nominal(criterion.rule, criterion, criterion.nominal)
    if criterion.rule is AcceptanceRule.OWN:
        return _own(criterion)
    return None


def edition_row(name: str, edition: str | None) -> Row | None:
    """The row of a table of SSPC-PA 2 that holds for an edition, the latest year of several; None where no year is stated, or one
    before all rows."""
    years = [int(year) for year in re.findall(r"(?:19|20)\d\d", edition or "")]
    if not years:
        return None
    begun = [row for row in table(name).rows if int(row["from_edition"]) <= max(years)]
    return max(begun, key=lambda row: int(row["from_edition"]), default=None)


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
    least, most = specified(criterion)
    shares = _spot_shares(criterion)
    if shares is None or (least is None and most is None):
        return None
    of_least, of_most, basis = shares
    # at the level without a most spot the area has no most either (from memory)
    free = of_most is None
    written = criterion.spot_min is not None and (free or criterion.spot_max is not None)
    spots = (
        share_of(least, of_least) if least is not None else None,
        share_of(most, of_most) if most is not None and of_most is not None else None,
    )
    return Counting(
        spot_min=_higher(spots[0], criterion.spot_min),
        spot_max=_lower(spots[1], criterion.spot_max),
        mean_min=_higher(least, criterion.area_min),
        mean_max=_lower(None if free else most, criterion.area_max),
        of_spots=True,
        unconfirmed=None if written else basis,
    )


def specified(criterion: Criterion) -> tuple[Quantity | None, Quantity | None]:
    """Minimum and maximum as stated; under SSPC-PA 2, which holds the mean of each area to them, also as those of areas alone, or what
    the edition makes of one film alone."""
    if criterion.rule is not AcceptanceRule.PA_2:
        return criterion.min, criterion.max
    least = criterion.area_min if criterion.min is None else criterion.min
    most = criterion.area_max if criterion.max is None else criterion.max
    if least is not None or most is not None or criterion.nominal is None:
        return least, most
    row = edition_row("sspc_pa_2_single_values", criterion.edition)
    if row is None:
        return None, None
    most = share_of(criterion.nominal, Fraction(row["max_pct"])) if row["max_pct"] else None
    return share_of(criterion.nominal, Fraction(row["min_pct"])), most


def _spot_shares(criterion: Criterion) -> tuple[Fraction, Fraction | None, Basis | None] | None:
    """What a spot may fall below the minimum and exceed the maximum by, as shares of them, and the basis where not confirmed."""
    levels = table("sspc_pa_2_levels")
    row = next((row for row in levels.rows if row["level"] == str(criterion.level)), None)
    basis = levels.basis if row is not None and row["seen"] != "yes" else None
    if row is None and criterion.level is None:
        edition = edition_row("sspc_pa_2_editions", criterion.edition)
        row = edition if edition is not None and edition["levels"] == "no" else None
        basis = table("sspc_pa_2_editions").basis
    if row is None:
        return None
    return Fraction(row["spot_min_pct"]), Fraction(row["spot_max_pct"]) if row["spot_max_pct"] else None, basis


def _own(criterion: Criterion) -> Counting | None:
    """An own rule in figures: each reading or each spot inside the limits, no reading below a share of nominal, few below nominal."""
    counts = criterion.least_reading is not None or criterion.below_nominal is not None
    if criterion.each is None and not counts:
        return None
    nominal = criterion.nominal
    if counts and nominal is None:
        return None
    spots = criterion.each is Each.SPOT
    single = None if spots else criterion.min
    if nominal is not None and criterion.least_reading is not None:
        single = _higher(single, share_of(nominal, criterion.least_reading.to("%")))
    return Counting(
        single_min=single,
        single_max=None if spots else criterion.max,
        spot_min=criterion.min if spots else None,
        spot_max=criterion.max if spots else None,
        counted_from=nominal if criterion.below_nominal is not None else None,
        below_most=criterion.below_nominal.to("%") / PERCENT if criterion.below_nominal is not None else Fraction(1),
        of_spots=spots,
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
