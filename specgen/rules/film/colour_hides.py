"""FLM010 The colour hides within the maximum DFT of the coat

Checks
    The DFT for full hiding of the variant, or else of its product, against the maximum DFT of the coat, or else of the product.
Why
    Where full hiding needs more than the maximum DFT, either the undercoat shows through or the coat is applied too thick.
Passes
    products.base.film.hiding: 30 um

    products.primer.film.hiding: 80 um

    Given a coat with no film limits at all
    products.base.film: {hiding: 35 um}

    Given second good
    systems.deck.layers.gloss.film: {min: 1.5 mil, nominal: 1.5 mil, max: 1.5 mil}
Fails
    products.base.film.hiding: 35 um    # at systems.cab.layers.base.film.max

    products.base.variants.standard.overrides: {hiding: 40 um}    # at systems.cab.layers.base.film.max

    products.primer.film.hiding: 81 um    # at systems.cab.layers.primer.film.max

    Given second good
    products.mastic.variants.buff.overrides: {solids_in_can: 64 %, solids_sprayed: 64 %, hiding: 8.1 mil}    # at systems.deck.layers.second.film.max
To put right
    Choose an undercoat closer in colour, more coats where the product allows them, or another colour.
"""

from specgen.facts.layer.film import film_limit, film_of_variant
from specgen.rules.kit import ERROR, LOGIC, Problem, Problems, Spec, System, date, rule


@rule("FLM010", on=System, severity=ERROR, source=LOGIC)
def colour_hides(system: System, spec: Spec, on: date) -> Problems:
    for layer in system.layers:
        hiding = film_of_variant(spec.product_of(layer), spec.variant_of(layer), "hiding")
        most = film_limit(system, layer, spec, "max")
        if hiding is not None and most is not None and hiding.value > most.value:
            what = f"{layer.variant or layer.product} needs {hiding.value} for full hiding; the maximum DFT of the coat {layer.id} is {most.value}"
            yield Problem(("layers", layer.id, "film", "max"), what)
