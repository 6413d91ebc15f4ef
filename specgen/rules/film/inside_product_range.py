"""FLM003 A coat stays within the DFT range of its product

Checks
    Minimum and maximum DFT of each coat against the minimum and maximum DFT of its product. Where only rounding between um and mil sets two limits apart, this is a note.
Why
    Below its minimum DFT a product does not protect or hide; above its maximum it runs, traps solvent or cracks.
Passes
    systems.cab.layers.primer.film: {min: 45 um, nominal: 60 um, max: 70 um}
    systems.cab.total: {min: 100 um, max: 170 um}
    jobs.refit.inspection.primer-film.criterion: {rule: own, min: 45 um, max: 70 um, text: no reading outside the limits}

    Given second good
    systems.deck.layers.gloss.film: {min: 1.5 mil, nominal: 2 mil, max: 3 mil}

    without products.base.film.min
    without products.clear.film.max
Fails
    systems.cab.layers.primer.film: {min: 40 um, nominal: 60 um, max: 3.15 mil}    # at systems.cab.layers.primer.film.max    # also INS013 at jobs.refit.inspection.primer-film.criterion.max

    systems.cab.layers.primer.film: {min: 40 um, nominal: 60 um, max: 100 um}    # at systems.cab.layers.primer.film.max    # also INS013 at jobs.refit.inspection.primer-film.criterion.max

    systems.cab.layers.primer.film: {min: 30 um, nominal: 60 um, max: 80 um}    # at systems.cab.layers.primer.film.min    # also INS013 at jobs.refit.inspection.primer-film.criterion.min

    systems.cab.layers.clear.film: {min: 39 um, nominal: 50 um, max: 71 um}    # at systems.cab.layers.clear.film.min    # at systems.cab.layers.clear.film.max

    Given second good
    systems.deck.layers.gloss.film: {min: 1.49 mil, nominal: 2 mil, max: 3.01 mil}    # at systems.deck.layers.gloss.film.min    # at systems.deck.layers.gloss.film.max    # also FLM008 at systems.deck.layers.gloss.coats
To put right
    Stay within the DFT range of the product, or choose another product.
"""

from specgen.rules.kit import ERROR, LOGIC, Problem, Problems, Spec, System, date, rule, unless_rounded


@rule("FLM003", on=System, severity=ERROR, source=LOGIC)
def inside_product_range(system: System, spec: Spec, on: date) -> Problems:
    for layer in system.layers:
        allowed, asked = spec.product_of(layer).film, layer.film
        if allowed.min is not None and asked.min is not None and asked.min < allowed.min:
            what = f"minimum DFT {asked.min} is below the minimum of the product {layer.product}, {allowed.min}"
            yield unless_rounded(Problem(("layers", layer.id, "film", "min"), what), asked.min, allowed.min)
        if allowed.max is not None and asked.max is not None and asked.max > allowed.max:
            what = f"maximum DFT {asked.max} is above the maximum of the product {layer.product}, {allowed.max}"
            yield unless_rounded(Problem(("layers", layer.id, "film", "max"), what), asked.max, allowed.max)
