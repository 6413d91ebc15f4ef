"""FLM008 No coat is thicker than the product allows in one coat

Checks
    The maximum of each layer, divided by its number of coats, against the most film in one coat that the product allows. No number of coats counts as one.
Why
    A coat laid on too thick runs, wrinkles or keeps its solvent and stays soft for weeks.
Passes
    products.primer.film.max_single_coat: 40 um
    systems.cab.layers.primer.coats: 2
Fails
    products.primer.film.max_single_coat: 30 um    # at systems.cab.layers.primer.coats
    systems.cab.layers.primer.coats: 2

    systems.chassis.layers.barrier.coats: 0    # at systems.chassis.layers.barrier.coats
To put right
    Coats are the maximum of the layer divided by the most film in one coat, rounded up; or lower the maximum.
"""

from specgen.rules.kit import ERROR, LOGIC, Problem, Problems, Spec, System, date, rule


@rule("FLM008", on=System, severity=ERROR, source=LOGIC)
def film_in_one_coat(system: System, spec: Spec, on: date) -> Problems:
    for layer in system.layers:
        path = ("layers", layer.id, "coats")
        most = spec.product_of(layer).film.max_single_coat
        coats = 1 if layer.coats is None else layer.coats
        if coats == 0:
            yield Problem(path, f"the layer {layer.id} has no coat at all")
        elif most is not None and layer.film.max is not None and layer.film.max.base > most.base * coats:
            laid = "one coat" if coats == 1 else f"{coats} coats"
            yield Problem(path, f"{layer.film.max} in {laid} is more than the {most} a coat of {layer.product} allows")
