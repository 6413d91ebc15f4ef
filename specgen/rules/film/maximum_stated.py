"""FLM002 A coat with a minimum DFT has a maximum

Checks
    Each coat with a nominal or minimum DFT, its own or that of its product, but with no maximum DFT, neither its own nor that of its product.
Why
    Without a maximum DFT, runs, trapped solvent and cracking from excessive thickness cannot be rejected.
Passes
    systems.cab.layers.primer.film: {min: 40 um, nominal: 60 um}
    without systems.cab.total

    Given a coat with no film limits at all

    Given second good
Fails
    systems.cab.layers.primer.film: {min: 40 um, nominal: 60 um}    # at systems.cab.layers.primer.film.max
    without products.primer.film.max
    without systems.cab.total

    systems.cab.layers.primer.film: {}    # at systems.cab.layers.primer.film.max
    without products.primer.film.max
    without systems.cab.total

    systems.cab.layers.clear.film: {nominal: 50 um}    # at systems.cab.layers.clear.film.max
    without products.clear.film.max
    without systems.cab.total

    Given second good
    without products.mastic.film.max    # at systems.deck.layers.second.film.max
To put right
    Take the maximum DFT from the data sheet of the product and write it beside the minimum.
"""

from specgen.facts.layer.film import film_limit
from specgen.rules.kit import WARNING, Problem, Problems, Spec, System, cite, date, rule


@rule(
    "FLM002",
    on=System,
    severity=WARNING,
    source=cite("ISO-19840", "acceptance criteria: every reading at or below the specified maximum"),
)
def maximum_stated(system: System, spec: Spec, on: date) -> Problems:
    for layer in system.layers:
        least, nominal, most = (film_limit(system, layer, spec, limit) for limit in ("min", "nominal", "max"))
        if (least is not None or nominal is not None) and most is None:
            yield Problem(("layers", layer.id, "film", "max"), f"the coat {layer.id} has no maximum DFT")
