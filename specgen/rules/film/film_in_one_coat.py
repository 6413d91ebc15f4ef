"""FLM008 No coat exceeds the maximum DFT per coat of the product

Checks
    The maximum DFT of each entry of layers, divided by its number of coats, against the maximum DFT per coat of the product. Where no number of coats is stated, it counts as one. Where the entry states no maximum DFT, its nominal or minimum DFT is assessed, and the maximum DFT of the product gives only a warning.
Why
    A coat applied too thick runs, wrinkles, or retains solvent and stays soft for weeks.
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
    Divide the maximum DFT of the entry by the maximum DFT per coat and round up: that is the number of coats; or lower the maximum DFT.
"""

from specgen.facts.layer.film import Film, film_limit
from specgen.rules.kit import (
    ERROR,
    LOGIC,
    WARNING,
    Layer,
    Problem,
    Problems,
    Quantity,
    Spec,
    System,
    date,
    rule,
    unless_rounded,
)
from specgen.units.count import Count
from specgen.units.locale import counted
from specgen.units.rounding import plain_text


@rule("FLM008", on=System, severity=ERROR, source=LOGIC)
def film_in_one_coat(system: System, spec: Spec, on: date) -> Problems:
    for layer in system.layers:
        path = ("layers", layer.id, "coats")
        most = spec.product_of(layer).film.max_single_coat
        coats = Count(1, 1) if layer.coats is None else layer.coats
        if coats.low == 0:
            yield Problem(path, f"the number of coats of {layer.id} is zero")
        elif most is not None and coats.high is not None:
            # of a range of coats the most may be laid
            yield from _judged(system, layer, spec, most, coats.high)


def _judged(system: System, layer: Layer, spec: Spec, most: Quantity, coats: int) -> Problems:
    asked, allowed = _asked(system, layer, spec), film_limit(system, layer, spec, "max")
    laid = counted("one coat", f"{coats} coats", coats)
    too_much = f"in {laid} exceeds the maximum DFT per coat of {layer.product}, {most}"
    together = Quantity.of("thickness", most.number * coats, most.unit, plain_text(most.number * coats))
    if asked is not None and asked.value > together:
        problem = Problem(("layers", layer.id, "coats"), f"DFT {asked.value}{asked.lender} {too_much}")
        yield unless_rounded(problem, asked.value, together)
    elif allowed is not None and allowed.value > together:
        # a thinner film meets both, and the layer does not state this one
        what = f"{layer.id} states no maximum DFT, and {allowed.value}{allowed.lender} {too_much}"
        problem = Problem(("layers", layer.id, "film", "max"), what, "write the maximum DFT of the coat", WARNING)
        yield unless_rounded(problem, allowed.value, together)


def _asked(system: System, layer: Layer, spec: Spec) -> Film | None:
    """The maximum or nominal DFT that the layer itself states; the minimum in force, where it states neither."""
    films = [film_limit(system, layer, spec, limit) for limit in ("max", "nominal", "min")]
    return next((film for film in films if film is not None and (film.path[-1] == "min" or not film.borrowed)), None)
