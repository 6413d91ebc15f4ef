"""FLM004 A stated total can be met by its layers

Checks
    The stated total against the sums of the layers' minima and maxima. A limit that a layer does not state is that of its product.
Why
    Where the sums and the total do not meet, no film that is right in every layer can be right in total.
Passes
    systems.cab.total: {min: 95 um, max: 180 um}

    systems.cab.total: {max: 95 um}

    systems.cab.total: {min: 180 um}

    Given a coat with no film limits at all
Fails
    systems.cab.total: {min: 190 um}    # at systems.cab.total.min

    systems.cab.total: {max: 90 um}    # at systems.cab.total.max

    systems.cab.layers.primer.film: {min: 40 um, nominal: 60 um}
    systems.cab.total: {min: 181 um}    # at systems.cab.total.min

    systems.cab.layers.clear.film: {nominal: 50 um, max: 70 um}
    systems.cab.total: {max: 94 um}    # at systems.cab.total.max

    Given second good
    systems.deck.total: {min: 16.6 mil}    # at systems.deck.total.min
To put right
    Work the total out from its layers, or leave it out.
"""

from specgen.facts.layer.sums import film_sum
from specgen.rules.kit import ERROR, LOGIC, Problem, Problems, Spec, System, date, rule


@rule("FLM004", on=System, severity=ERROR, source=LOGIC)
def total_can_be_met(system: System, spec: Spec, on: date) -> Problems:
    if system.total is None:
        return
    least, most, total = film_sum(system, spec, "min"), film_sum(system, spec, "max"), system.total
    if total.max is not None and least is not None and least.value > total.max:
        yield Problem(
            ("total", "max"),
            f"the layers are at least {least.value} thick{least.lenders}, the total is at most {total.max}",
        )
    if total.min is not None and most is not None and most.value < total.min:
        yield Problem(
            ("total", "min"),
            f"the layers are at most {most.value} thick{most.lenders}, the total is at least {total.min}",
        )
