"""FLM008 No coat is thicker than the product allows in one coat

Checks
    The maximum of each layer, divided by its number of coats, against the most film in one coat that the product allows. No number of coats counts as one. Where the layer states no maximum, its nominal or least film is judged, and the maximum of the product only warns.
Why
    A coat laid on too thick runs, wrinkles or keeps its solvent and stays soft for weeks.
Passes
    products.primer.film.max_single_coat: 40 um
    systems.cab.layers.primer.coats: 2

    Given second good
    products.gloss.film.max_single_coat: 2.5 mil
Fails
    products.primer.film.max_single_coat: 30 um    # at systems.cab.layers.primer.coats
    systems.cab.layers.primer.coats: 2

    products.primer.film.max_single_coat: 70 um
    systems.cab.layers.primer.film: {min: 40 um, nominal: 60 um}    # warning at systems.cab.layers.primer.film.max

    products.primer.film.max_single_coat: 50 um
    systems.cab.layers.primer.film: {min: 40 um, nominal: 60 um}    # at systems.cab.layers.primer.coats

    products.primer.film.max_single_coat: 35 um
    systems.cab.layers.primer.film: {}    # at systems.cab.layers.primer.coats
    without systems.cab.total.nominal

    systems.chassis.layers.barrier.coats: 0    # at systems.chassis.layers.barrier.coats

    Given second good
    products.gloss.film.max_single_coat: 2.4 mil    # at systems.deck.layers.gloss.coats

    systems.cab.layers.clear.coats: 0    # at systems.cab.layers.clear.coats
To put right
    Coats are the maximum of the layer divided by the most film in one coat, rounded up; or lower the maximum.
"""

from specgen.facts.layer.film import Film, film_limit
from specgen.rules.kit import ERROR, LOGIC, WARNING, Layer, Problem, Problems, Quantity, Spec, System, date, rule
from specgen.units.locale import counted


@rule("FLM008", on=System, severity=ERROR, source=LOGIC)
def film_in_one_coat(system: System, spec: Spec, on: date) -> Problems:
    for layer in system.layers:
        path = ("layers", layer.id, "coats")
        most = spec.product_of(layer).film.max_single_coat
        coats = 1 if layer.coats is None else layer.coats
        if coats == 0:
            yield Problem(path, f"the layer {layer.id} has no coat at all")
        elif most is not None:
            yield from _judged(system, layer, spec, most, coats)


def _judged(system: System, layer: Layer, spec: Spec, most: Quantity, coats: int) -> Problems:
    asked, allowed = _asked(system, layer, spec), film_limit(system, layer, spec, "max")
    laid = counted("one coat", f"{coats} coats", coats)
    too_much = f"in {laid} is more than the {most} a coat of {layer.product} allows"
    if asked is not None and asked.value.base > most.base * coats:
        yield Problem(("layers", layer.id, "coats"), f"{asked.value}{asked.lender} {too_much}")
    elif allowed is not None and allowed.value.base > most.base * coats:
        # a thinner film meets both, and the layer did not ask for this one
        what = f"{layer.id} states no maximum, and {allowed.value}{allowed.lender} {too_much}"
        yield Problem(("layers", layer.id, "film", "max"), what, "write the maximum of the layer", WARNING)


def _asked(system: System, layer: Layer, spec: Spec) -> Film | None:
    """The most film that the layer itself asks for or allows; the least one in force, where it states no more than that."""
    films = [film_limit(system, layer, spec, limit) for limit in ("max", "nominal", "min")]
    return next((film for film in films if film is not None and (film.path[-1] == "min" or not film.borrowed)), None)
