"""FLM002 A film with a lower limit has an upper one

Checks
    Each layer with a nominal film or a minimum, of its own or from its product, that has no maximum, neither of its own nor from its product.
Why
    Without a maximum, runs, trapped solvent and cracking from too thick a film cannot be rejected.
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
    Take the maximum from the product's data sheet and write it beside the minimum.
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
            yield Problem(("layers", layer.id, "film", "max"), f"the film of the layer {layer.id} has no maximum")
