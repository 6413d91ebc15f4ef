"""FLM006 A stated total DFT adds a requirement

Checks
    A total minimum below the sum of the minimum DFTs of the coats, less what sanding and polishing may remove, or a total maximum above the sum of their maximum DFTs. A limit that a coat does not state is that of its product. Where only rounding between um and mil sets a total and the sum apart, this is a note.
Why
    Every film that meets the limits of its coats meets such a total: it looks like a requirement but adds nothing.
Passes
    systems.cab.total: {min: 100 um, max: 170 um}

    systems.cab.layers.primer.film: {min: 40 um, nominal: 60 um}
    systems.cab.layers.clear.film: {nominal: 50 um}
    systems.cab.total: {min: 95 um, max: 180 um}

    systems.cab.total: {nominal: 130 um, max: 180 um}

    systems.cab.layers.primer.sanding_removes: 10 um
    systems.cab.layers.primer.remaining_min: 30 um
    systems.cab.total: {min: 85 um, max: 180 um}

    Given a coat with no film limits at all
Fails
    systems.cab.total: {min: 3.7 mil, max: 7 mil}    # note at systems.cab.total.min

    systems.cab.total: {min: 80 um, max: 180 um}    # at systems.cab.total.min

    systems.cab.total: {min: 95 um, max: 200 um}    # at systems.cab.total.max

    systems.cab.layers.primer.film: {min: 40 um, nominal: 60 um}
    systems.cab.total.max: 900 um    # at systems.cab.total.max

    Given second good
    systems.deck.total: {min: 6.5 mil, max: 16.6 mil}    # at systems.deck.total.min    # at systems.deck.total.max
To put right
    Set the total between the sums, or delete it.
"""

from specgen.facts.layer.sums import film_sum, least_film
from specgen.rules.kit import LOGIC, WARNING, Problem, Problems, Spec, System, date, rule, unless_sum_rounded


@rule("FLM006", on=System, severity=WARNING, source=LOGIC)
def total_decides(system: System, spec: Spec, on: date) -> Problems:
    if system.total is None:
        return
    least, most, total = least_film(system, system.layers, spec), film_sum(system, spec, "max"), system.total
    if total.min is not None and least is not None and total.min < least.value:
        what = f"total minimum {total.min} adds nothing: it is below the sum of the coat minimums, {least.value}{least.lenders}"
        yield unless_sum_rounded(Problem(("total", "min"), what), total.min, least.films)
    if total.max is not None and most is not None and total.max > most.value:
        what = f"total maximum {total.max} adds nothing: it is above the sum of the coat maximums, {most.value}{most.lenders}"
        yield unless_sum_rounded(Problem(("total", "max"), what), total.max, most.films)
