"""FIL001 A wash or etch primer is overcoated the same day

Checks
    Each coat of wash or etch primer: a primer, surfacer, sealer or intermediate coat follows it, within the published minimum and maximum overcoating interval. Where its product states an interval for that coat, that one holds; past the published maximum it still gives a warning.
Why
    It is a few micrometres thin and no barrier: left open it deteriorates, and whatever is applied later comes off with it.
Passes
    Given a wash primer under a primer

    Given a wash primer under a primer
    products.barrier.overcoat: [{id: primer, next_coat: primer, interval: 15 min..24 h, air: 15 degC}]
    systems.chassis.layers.wash.overcoat_interval: 15 min..8 h
Fails
    products.barrier.binder: wash_primer    # at systems.chassis.layers.barrier
    products.barrier.film: {min: 5 um, nominal: 8 um, max: 12 um}
    systems.chassis.layers.barrier.film: {min: 5 um, nominal: 8 um, max: 12 um}
    jobs.refit.climate.humidity: 40..65 %

    products.barrier.binder: wash_primer
    products.barrier.roles: [wash-primer]
    products.barrier.film: {min: 5 um, nominal: 8 um, max: 12 um}
    products.barrier.overcoat: [{id: primer, next_coat: primer, interval: 30 min..72 h, air: 15 degC}]
    systems.chassis.layers: [{id: wash, role: wash-primer, product: barrier, variant: standard, film: {min: 5 um, nominal: 8 um, max: 12 um}, coats: 1, overcoat_interval: 30 min..48 h}, {id: grey, role: primer, product: primer, variant: grey, film: {min: 40 um, nominal: 60 um, max: 80 um}, passes: 4}]    # warning at systems.chassis.layers.wash.overcoat_interval
    jobs.refit.climate.humidity: 40..65 %

    Given a wash primer under a primer
    without products.barrier.overcoat
    systems.chassis.layers.wash.overcoat_interval: 29 min..24 h    # at systems.chassis.layers.wash.overcoat_interval    # also FIL005 at systems.chassis.layers.grey    # also LAY006 at systems.chassis.layers.wash.overcoat_interval

    Given a wash primer under a primer
    products.barrier.overcoat: [{id: primer, next_coat: primer, interval: 10 min..72 h, air: 15 degC}]
    systems.chassis.layers.wash.overcoat_interval: 30 min..24.1 h    # warning at systems.chassis.layers.wash.overcoat_interval

    products.primer.binder: etch_primer_1k    # at systems.cab.layers.primer
To put right
    Apply a primer over it within the interval stated; if the maximum is exceeded, remove it and start again.
"""

from fractions import Fraction

from specgen.facts.layer.intervals import windows_for
from specgen.facts.pairs.acids import CLOSING, etching_primer
from specgen.facts.pairs.families import BODY_FILLER, ETCHING
from specgen.rules.kit import ERROR, WARNING, Layer, Problem, Problems, Quantity, Range, Spec, System, date, rule, table
from specgen.units.display import show_range

_WINDOWS = table("recoat_windows")


@rule("FIL001", on=System, severity=ERROR, source=_WINDOWS.row_citation(_WINDOWS.row("id", "wash_primer_primer")))
def wash_primer_covered(system: System, spec: Spec, on: date) -> Problems:
    row = _WINDOWS.row("id", "wash_primer_primer")
    least, most = (Quantity.of("duration", Fraction(row[side]), "h", row[side]) for side in ("least_h", "most_h"))
    published = Range("duration", least, most)
    for at, layer in enumerate(system.layers):
        if spec.product_of(layer).binder not in ETCHING:
            continue
        above = system.layers[at + 1] if at + 1 < len(system.layers) else None
        if above is None:
            yield Problem(("layers", layer.id), f"{etching_primer(layer, spec)} is not overcoated")
        elif above.role not in CLOSING and spec.product_of(above).binder != BODY_FILLER:
            # body filler on acid is a fault of its own, see FIL006
            what = f"the {above.role} {above.id} is applied directly over {etching_primer(layer, spec)}"
            yield Problem(("layers", layer.id), what)
        else:
            yield from _interval(layer, above, published, spec)


def _interval(layer: Layer, above: Layer, published: Range, spec: Spec) -> Problems:
    planned = layer.overcoat_interval
    if planned is None:
        return
    # the product's own interval goes before the published one, of which only the end is left: the coat goes stale
    stated = bool(windows_for(layer, above, spec))
    held = Range(published.kind, None, published.high) if stated else published
    if not held.holds_all_of(planned):
        what = f"the interval {show_range(planned)} between {layer.id} and {above.id} is outside the published interval, {show_range(published)}"
        weak = stated or layer.product is None
        yield Problem(("layers", layer.id, "overcoat_interval"), what, severity=WARNING if weak else None)
