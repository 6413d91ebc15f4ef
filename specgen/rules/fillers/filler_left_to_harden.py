"""FIL011 Body filler hardens before overcoating

Checks
    The minimum overcoating interval of each coat of body filler, against the published one.
Why
    If it is overcoated too early, styrene and solvent stay in the body filler: it shrinks for weeks and its outline shows.
Passes
    products.barrier.binder: polyester_putty
    products.barrier.roles: [body-filler]
    products.barrier.overcoat: [{id: primer, next_coat: primer, interval: 90 min..24 h, air: 20 degC}]
    systems.chassis.layers: [{id: fill, role: body-filler, product: barrier, variant: standard, film: {min: 60 um, nominal: 80 um, max: 120 um}, coats: 1, overcoat_interval: 90 min..24 h}, {id: grey, role: primer, product: primer, variant: grey, film: {min: 40 um, nominal: 60 um, max: 80 um}, passes: 4}]
    jobs.refit.climate.air: 20..25 degC

    Given a body filler under a primer
    systems.chassis.layers: [{id: fill, role: body-filler, product: barrier, variant: standard, film: {min: 60 um, nominal: 80 um, max: 120 um}, coats: 1, overcoat_interval: 30 min..24 h, abraded_with: P80}, {id: more, role: body-filler, product: barrier, variant: standard, film: {min: 60 um, nominal: 80 um, max: 120 um}, coats: 1, overcoat_interval: 90 min..24 h}, {id: grey, role: primer, product: primer, variant: grey, film: {min: 40 um, nominal: 60 um, max: 80 um}, passes: 4}]
    products.barrier.overcoat: [{id: itself, next_coat: itself, interval: 20 min..24 h, air: 20 degC}, {id: primer, next_coat: primer, interval: 90 min..24 h, air: 20 degC}]
Fails
    products.barrier.binder: polyester_putty
    products.barrier.roles: [body-filler]
    products.barrier.overcoat: [{id: primer, next_coat: primer, interval: 30 min..24 h, air: 20 degC}]
    systems.chassis.layers: [{id: fill, role: body-filler, product: barrier, variant: standard, film: {min: 60 um, nominal: 80 um, max: 120 um}, coats: 1, overcoat_interval: 40 min..24 h}, {id: grey, role: primer, product: primer, variant: grey, film: {min: 40 um, nominal: 60 um, max: 80 um}, passes: 4}]    # at systems.chassis.layers.fill.overcoat_interval
    jobs.refit.climate.air: 20..25 degC

    Given a body filler under a primer
    products.barrier.overcoat: [{id: primer, next_coat: primer, interval: 30 min..24 h, air: 20 degC}]
    systems.chassis.layers.fill.overcoat_interval: 89 min..24 h    # at systems.chassis.layers.fill.overcoat_interval

    products.base.binder: polyester_putty
    systems.cab.layers.base.overcoat_interval: 80 min..24 h    # at systems.cab.layers.base.overcoat_interval    # also FIL010 at systems.cab.layers.base    # also FIL012 at jobs.refit.climate.air
To put right
    Allow at least the time stated at 20 degC, longer when it is colder or the body filler is thick.
"""

from fractions import Fraction

from specgen.facts.pairs.families import BODY_FILLER
from specgen.rules.kit import WARNING, Problem, Problems, Quantity, Spec, System, date, rule, table

_WINDOWS = table("recoat_windows")


@rule("FIL011", on=System, severity=WARNING, source=_WINDOWS.row_citation(_WINDOWS.row("id", "filler_primer")))
def filler_left_to_harden(system: System, spec: Spec, on: date) -> Problems:
    row = _WINDOWS.row("id", "filler_primer")
    least = Quantity.of("duration", Fraction(row["least_h"]), "h", row["least_h"])
    for below, above in zip(system.layers, system.layers[1:], strict=False):
        if spec.product_of(below).binder != BODY_FILLER or below.overcoat_interval is None:
            continue  # an interval that is missing is found by the rule on intervals
        if spec.product_of(above).binder == BODY_FILLER:
            continue  # body filler on body filler may follow as soon as it can be sanded
        if below.overcoat_interval.low is None or below.overcoat_interval.low < least:
            stated = below.overcoat_interval.low or "not stated"
            what = f"the minimum overcoating interval of the body filler {below.id} is {stated}; the published minimum is {least}"
            yield Problem(("layers", below.id, "overcoat_interval"), what)
