"""FIL009 Body filler is not applied too thick

Checks
    The maximum DFT of each coat of polyester body filler, or else of its product, and of several such coats together, against the general limit of the trade. The limit of the product itself has a rule of its own.
Why
    Thick body filler cracks, sinks and loses adhesion when the panel flexes; the dent is in the metal and is straightened there.
Passes
    products.barrier.binder: polyester_putty
    products.barrier.roles: [body-filler]
    products.barrier.overcoat: [{id: primer, next_coat: primer, interval: 90 min..24 h, air: 20 degC}]
    products.barrier.film: {min: 60 um, nominal: 80 um, max: 3 mm}
    systems.chassis.layers: [{id: fill, role: body-filler, product: barrier, variant: standard, film: {min: 60 um, nominal: 80 um, max: 3 mm}, coats: 1, overcoat_interval: 2 h..24 h}, {id: grey, role: primer, product: primer, variant: grey, film: {min: 40 um, nominal: 60 um, max: 80 um}, passes: 4}]
    jobs.refit.climate.air: 20..25 degC

    Given a body filler under a primer
    products.barrier.film: {min: 60 um, nominal: 80 um, max: 3.2 mm}
    systems.chassis.layers.fill.film: {min: 60 um, nominal: 80 um, max: 3.2 mm}
Fails
    products.barrier.binder: polyester_putty
    products.barrier.roles: [body-filler]
    products.barrier.overcoat: [{id: primer, next_coat: primer, interval: 90 min..24 h, air: 20 degC}]
    products.barrier.film: {min: 60 um, nominal: 80 um, max: 6 mm}
    systems.chassis.layers: [{id: fill, role: body-filler, product: barrier, variant: standard, film: {min: 60 um, nominal: 80 um, max: 5 mm}, coats: 1, overcoat_interval: 2 h..24 h}, {id: grey, role: primer, product: primer, variant: grey, film: {min: 40 um, nominal: 60 um, max: 80 um}, passes: 4}]    # at systems.chassis.layers.fill.film.max
    jobs.refit.climate.air: 20..25 degC

    Given a body filler under a primer
    products.barrier.film: {min: 60 um, nominal: 80 um, max: 4 mm}
    systems.chassis.layers.fill.film: {min: 60 um, nominal: 80 um, max: 3.21 mm}    # at systems.chassis.layers.fill.film.max

    Given a body filler under a primer
    products.barrier.film: {min: 60 um, nominal: 80 um, max: 4 mm}
    systems.chassis.layers.fill.film: {min: 60 um, nominal: 80 um}    # at systems.chassis.layers.fill.film.max

    Given a body filler under a primer
    products.barrier.film: {min: 60 um, nominal: 80 um, max: 2 mm}
    products.barrier.overcoat.itself: {id: itself, next_coat: itself, interval: 30 min..24 h, air: 20 degC}
    systems.chassis.layers: [{id: fill, role: body-filler, product: barrier, variant: standard, film: {min: 60 um, nominal: 80 um, max: 2 mm}, coats: 1, overcoat_interval: 2 h..24 h, abraded_with: P80}, {id: more, role: body-filler, product: barrier, variant: standard, film: {min: 60 um, nominal: 80 um, max: 1.3 mm}, coats: 1, overcoat_interval: 2 h..24 h}, {id: grey, role: primer, product: primer, variant: grey, film: {min: 40 um, nominal: 60 um, max: 80 um}, passes: 4}]    # at systems.chassis.layers.more.film.max
To put right
    Straighten the metal first, and fill the rest in thin coats.
"""

from fractions import Fraction

from specgen.facts.layer.sums import family_maximums
from specgen.facts.pairs.families import BODY_FILLER
from specgen.rules.kit import WARNING, Concern, Problem, Problems, Quantity, Spec, System, date, rule, show, table

_LIMITS = table("family_film_limits")


@rule(
    "FIL009",
    on=System,
    severity=WARNING,
    concern=Concern.FILM,
    source=_LIMITS.row_citation(_LIMITS.row("id", "body_filler")),
)
def filler_thin(system: System, spec: Spec, on: date) -> Problems:
    filler = _LIMITS.row("id", "body_filler")
    most = Quantity.of("thickness", Fraction(filler["most_um"]), "um", filler["most_um"])
    for layers, allowed in family_maximums(system, spec, BODY_FILLER):
        if allowed > most:
            named = ", ".join(layer.id for layer in layers)
            together = " together" if len(layers) > 1 else ""
            what = f"the maximum DFT of the body filler {named}{together} is {show(allowed)}; the limit is {show(most)}"
            yield Problem(("layers", layers[-1].id, "film", "max"), what)
            return
