"""FLM022 A stated total DFT has a maximum

Checks
    A stated total DFT with a minimum or nominal has a maximum.
Why
    Without it a part is accepted however thick its coats are together: thick films crack, retain solvent and chip. The sum of the coat maximums is the maximum that all coats together can justify.
Passes
    systems.cab.total: {max: 180 um}

    Given second good
    systems.deck.total: {min: 7 mil, max: 16.5 mil}
Fails
    systems.cab.total: {min: 95 um, nominal: 130 um}    # at systems.cab.total.max

    systems.cab.total: {min: 95 um}    # at systems.cab.total.max
    without systems.cab.layers.clear.film.max
    without products.clear.film.max    # also FLM002 at systems.cab.layers.clear.film.max

    Given second good
    systems.deck.total: {nominal: 11 mil}    # at systems.deck.total.max
To put right
    Write the maximum, at most the sum of the coat maximums; or leave the total out so that it is calculated.
"""

from specgen.facts.layer.sums import film_sum
from specgen.rules.kit import WARNING, Problem, Problems, Spec, System, cite, date, rule, show


@rule(
    "FLM022",
    on=System,
    severity=WARNING,
    source=cite("ISO-19840", "acceptance criteria: every reading at or below the specified maximum"),
)
def total_maximum(system: System, spec: Spec, on: date) -> Problems:
    total = system.total
    if total is None or total.max is not None or (total.min is None and total.nominal is None):
        return
    most = film_sum(system, spec, "max")
    remedy = f"write max: {most.value}" if most is not None else "write the maximum of each coat, and of the total"
    offered = f"; the sum of the coat maximums is {show(most.value)}{most.lenders}" if most is not None else ""
    yield Problem(("total", "max"), f"the total DFT has no maximum{offered}", remedy)
