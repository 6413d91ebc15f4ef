"""WIN002 Without a stated interval the published one is kept

Checks
    The interval of each overcoated coat whose product states none for the product above, against the published intervals: epoxy, polyurethane over itself by the highest surface temperature, basecoat beneath clearcoat. For an abraded coat the maximum does not apply.
Why
    Solvent trapped beneath a coat applied too early wrinkles it; on a fully cured film the next coat does not adhere. General figures are not those of the manufacturer, so this is only a warning.
Passes
    systems.cab.layers.primer.overcoat_interval: 30 min..24 h
Fails
    without products.base.overcoat    # at systems.cab.layers.base.overcoat_interval    # also LAY006 at systems.cab.layers.base.overcoat_interval
    systems.cab.layers.base.overcoat_interval: 20 min..48 h

    Given second good
    without products.mastic.overcoat
    systems.deck.layers.second.overcoat_interval: 4.9 h..72 h    # at systems.deck.layers.second.overcoat_interval    # also LAY006 at systems.deck.layers.first.overcoat_interval    # also LAY006 at systems.deck.layers.second.overcoat_interval    # also OVR002 at systems.deck.layers.second.product

    Given second good
    without products.mastic.overcoat
    systems.deck.layers.first.overcoat_interval: 6 h..97 h    # at systems.deck.layers.first.overcoat_interval
    systems.deck.layers.second.overcoat_interval: 5 h..72 h    # also LAY006 at systems.deck.layers.first.overcoat_interval    # also LAY006 at systems.deck.layers.second.overcoat_interval    # also OVR002 at systems.deck.layers.second.product

    Given second good
    without products.mastic.overcoat
    without systems.deck.layers.second.abraded_with
    systems.deck.layers.first.overcoat_interval: 6 h..97 h    # at systems.deck.layers.first.overcoat_interval
    systems.deck.layers.second.overcoat_interval: 5 h..24 h    # also LAY006 at systems.deck.layers.first.overcoat_interval    # also LAY006 at systems.deck.layers.second.overcoat_interval    # also OVR002 at systems.deck.layers.second.product

    Given second good
    without products.mastic.overcoat
    without systems.deck.layers.second.abraded_with
    systems.deck.layers.second.overcoat_interval: 5 h..25 h    # at systems.deck.layers.second.overcoat_interval    # also LAY006 at systems.deck.layers.first.overcoat_interval    # also LAY006 at systems.deck.layers.second.overcoat_interval    # also OVR002 at systems.deck.layers.second.product

    Given second good
    without products.mastic.overcoat
    without products.gloss.overcoat
    jobs.rails.climate.surface: 15..32 degC
    systems.deck.layers.first.overcoat_interval: 6 h..97 h    # at systems.deck.layers.first.overcoat_interval
    systems.deck.layers.gloss.overcoat_interval: 4 h..36 h
    systems.deck.layers.last: {id: last, role: topcoat, product: gloss, variant: blue, film: {min: 1.6 mil, nominal: 2 mil, max: 2.5 mil}, coats: 1}    # also LAY006 at systems.deck.layers.first.overcoat_interval    # also LAY006 at systems.deck.layers.gloss.overcoat_interval    # also LAY006 at systems.deck.layers.second.overcoat_interval    # also OVR002 at systems.deck.layers.last.product    # also OVR002 at systems.deck.layers.second.product

    Given second good
    without products.gloss.overcoat
    jobs.rails.climate.surface: 15..32.5 degC
    systems.deck.layers.gloss.overcoat_interval: 3 h..25 h    # at systems.deck.layers.gloss.overcoat_interval
    systems.deck.layers.last: {id: last, role: topcoat, product: gloss, variant: blue, film: {min: 1.6 mil, nominal: 2 mil, max: 2.5 mil}, coats: 1}    # also LAY006 at systems.deck.layers.gloss.overcoat_interval    # also OVR002 at systems.deck.layers.last.product

    Given second good
    without products.mastic.overcoat
    without systems.deck.layers.second.abraded_with
    systems.deck.layers.first.role: surfacer
    systems.deck.layers.second.role: surfacer
    systems.deck.layers.second.overcoat_interval: 3 h..97 h    # at systems.deck.layers.second.overcoat_interval    # also LAY006 at systems.deck.layers.first.overcoat_interval    # also LAY006 at systems.deck.layers.second.overcoat_interval    # also OVR002 at systems.deck.layers.second.product
To put right
    Ask the manufacturer for the interval; until then keep the published one, or abrade the coat and state abraded_with.
"""

from fractions import Fraction

from specgen.facts.layer.bands import family_names, in_band, warmest_part
from specgen.facts.layer.intervals import late_allowed, windows_for
from specgen.facts.pairs.overcoat import weakest
from specgen.rules.kit import (
    PRACTICE,
    WARNING,
    Layer,
    Problem,
    Problems,
    Quantity,
    Role,
    Row,
    Spec,
    System,
    date,
    rule,
    table,
)

_WINDOWS = table("recoat_windows")
# Wash primer and body filler have rules of their own; bare metal and scuffed paint are no coats of a system.
_COATS = {"epoxy_2k", "pu", "basecoat"}
# The state a row speaks of; the others are of coats long cured or laid crosswise.
_STATES = {"", "primer"}


@rule("WIN002", on=System, severity=WARNING, source=PRACTICE)
def general_window(system: System, spec: Spec, on: date) -> Problems:
    part = warmest_part(system, spec)
    for below, above in zip(system.layers, system.layers[1:], strict=False):
        if below.overcoat_interval is None or windows_for(below, above, spec):
            continue
        row = _row(below, above, part, spec)
        if row is None:
            continue
        path, interval = ("layers", below.id, "overcoat_interval"), below.overcoat_interval
        names = family_names(spec.product_of(below).binder)
        source = weakest(_WINDOWS.row_citation(row), names[row["under"]])
        planned = f"the interval {interval} between {below.id} and {above.id}"
        least, last = _hours(row["least_h"]), _hours(row["grace_to_h"] or row["most_h"])
        if least is not None and (interval.low is None or interval.low < least):
            yield Problem(path, f"{planned} begins before the published minimum, {least}", source=source)
        late = last is not None and (interval.high is None or interval.high > last)
        if late and not late_allowed(below, above):
            what = f"{planned} ends after the published maximum, {last}"
            yield Problem(path, what, row["when_late"], source=source)


def _row(below: Layer, above: Layer, part: Quantity | None, spec: Spec) -> Row | None:
    """The nearest row: one for the family above before one for any, one for the state before one for none."""
    under = family_names(spec.product_of(below).binder)
    over = family_names(spec.product_of(above).binder)
    overs = [*over, *(["clear"] if above.role is Role.CLEARCOAT else []), "any"]
    found = [
        row
        for row in _WINDOWS.rows
        if row["under"] in _COATS & set(under)
        and row["over"] in overs
        and row["under_state"] in _STATES
        and (row["under_state"] != "primer" or below.role is Role.PRIMER)
        and _in_band(row, part)
    ]
    return min(found, key=lambda row: (row["over"] == "any", row["under_state"] == ""), default=None)


def _in_band(row: Row, part: Quantity | None) -> bool:
    if not row["surface_from_C"]:
        return True
    return part is not None and in_band(row, part)


def _hours(cell: str) -> Quantity | None:
    return Quantity.of("duration", Fraction(cell), "h", cell) if cell else None
