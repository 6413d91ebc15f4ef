"""FLM004 The stated total DFT can be met by its coats

Checks
    The stated total DFT against the sums of the minimum and maximum DFTs of the coats, the minimum less what sanding and polishing may remove. A limit that a coat does not state is that of its product; a coat without a minimum counts as nothing in the sum of the minimums. Where only rounding between um and mil sets a total and the sum apart, this is a note.
Why
    Where the sums and the total do not overlap, no film that is right in every coat can be right in total.
Passes
    systems.cab.total: {min: 95 um, max: 180 um}

    systems.cab.total: {max: 95 um}

    systems.cab.layers.primer.sanding_removes: 10 um
    systems.cab.layers.primer.remaining_min: 30 um
    systems.cab.total: {max: 85 um}

    systems.cab.total: {min: 180 um, max: 180 um}

    Given a coat with no film limits at all
Fails
    systems.cab.total: {min: 190 um}    # at systems.cab.total.min    # also FLM022 at systems.cab.total.max

    systems.cab.total: {max: 90 um}    # at systems.cab.total.max

    systems.cab.layers.primer.film: {min: 40 um, nominal: 60 um}
    systems.cab.total: {min: 181 um}    # at systems.cab.total.min    # also FLM022 at systems.cab.total.max

    systems.cab.layers.clear.film: {nominal: 50 um, max: 70 um}
    systems.cab.total: {max: 94 um}    # at systems.cab.total.max

    systems.cab.layers.base.film: {nominal: 20 um, max: 30 um}    # also FLM021 at systems.cab.layers.base.film.min
    without products.base.film.min
    systems.cab.total: {max: 79 um}    # at systems.cab.total.max

    systems.cab.layers.primer.sanding_removes: 10 um
    systems.cab.layers.primer.remaining_min: 30 um
    systems.cab.total: {max: 84 um}    # at systems.cab.total.max

    Given second good
    systems.deck.total: {min: 16.6 mil}    # at systems.deck.total.min    # also FLM022 at systems.deck.total.max
To put right
    Calculate the total DFT from its coats, or leave it out.
"""

from specgen.facts.layer.sums import film_sum, least_film
from specgen.rules.kit import ERROR, LOGIC, Problem, Problems, Spec, System, date, rule, unless_sum_rounded


@rule("FLM004", on=System, severity=ERROR, source=LOGIC)
def total_can_be_met(system: System, spec: Spec, on: date) -> Problems:
    if system.total is None:
        return
    least, most, total = least_film(system, system.layers, spec), film_sum(system, spec, "max"), system.total
    if total.max is not None and least is not None and least.value > total.max:
        what = f"total maximum {total.max} is below the sum of the coat minimums, {least.value}{least.lenders}"
        yield unless_sum_rounded(Problem(("total", "max"), what), total.max, least.films)
    if total.min is not None and most is not None and most.value < total.min:
        what = f"total minimum {total.min} is above the sum of the coat maximums, {most.value}{most.lenders}"
        yield unless_sum_rounded(Problem(("total", "min"), what), total.min, most.films)
