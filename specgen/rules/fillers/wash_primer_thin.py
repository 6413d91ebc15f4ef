"""FIL002 A wash primer stays thin

Checks
    The maximum DFT of each coat of wash primer, or else of its product, and of several such coats together, against the published figure.
Why
    A thick wash primer splits within its own film and retains acid that attacks the coat above.
Passes
    Given a wash primer under a primer

    Given a wash primer under a primer
    products.barrier.film.max: 13 um
    systems.chassis.layers.wash.film: {min: 5 um, nominal: 8 um, max: 13 um}
Fails
    products.barrier.binder: wash_primer
    products.barrier.roles: [wash-primer]
    products.barrier.film: {min: 5 um, nominal: 8 um, max: 25 um}
    products.barrier.overcoat: [{id: primer, next_coat: primer, interval: 30 min..24 h, air: 15 degC}]
    systems.chassis.layers: [{id: wash, role: wash-primer, product: barrier, variant: standard, film: {min: 5 um, nominal: 8 um, max: 20 um}, coats: 1, overcoat_interval: 30 min..24 h}, {id: grey, role: primer, product: primer, variant: grey, film: {min: 40 um, nominal: 60 um, max: 80 um}, passes: 4}]    # at systems.chassis.layers.wash.film.max
    jobs.refit.climate.humidity: 40..65 %

    Given a wash primer under a primer
    products.barrier.film.max: 14 um
    systems.chassis.layers.wash.film: {min: 5 um, nominal: 8 um}    # at systems.chassis.layers.wash.film.max

    Given a wash primer under a primer
    products.barrier.film.max: 14 um
    systems.chassis.layers.wash.film: {min: 5 um, nominal: 8 um, max: 13.1 um}    # at systems.chassis.layers.wash.film.max
To put right
    Apply one thin coat that is still transparent, 5 to 8 um; hiding is left to the primer.
"""

from fractions import Fraction

from specgen.facts.layer.sums import family_maximums
from specgen.rules.kit import WARNING, Concern, Problem, Problems, Quantity, Spec, System, date, rule, show, table

_LIMITS = table("family_film_limits")


@rule(
    "FIL002",
    on=System,
    severity=WARNING,
    concern=Concern.FILM,
    source=_LIMITS.row_citation(_LIMITS.row("id", "wash_primer_hard")),
)
def wash_primer_thin(system: System, spec: Spec, on: date) -> Problems:
    hard = _LIMITS.row("id", "wash_primer_hard")
    most = Quantity.of("thickness", Fraction(hard["most_um"]), "um", hard["most_um"])
    for layers, allowed in family_maximums(system, spec, "wash_primer"):
        if allowed > most:
            named = ", ".join(layer.id for layer in layers)
            together = " together" if len(layers) > 1 else ""
            what = f"the maximum DFT of the wash primer {named}{together} is {show(allowed)}; the published limit is {show(most)}"
            yield Problem(("layers", layers[-1].id, "film", "max"), what)
            return
