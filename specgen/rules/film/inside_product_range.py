"""FLM003 A layer stays inside its product's film range

Checks
    Minimum and maximum of each layer against the least and most film its product allows.
Why
    Below its minimum a product does not protect or hide; above its maximum it runs, traps solvent or cracks.
Passes
    systems.cab.layers.primer.film: {min: 45 um, nominal: 60 um, max: 70 um}
    systems.cab.total: {min: 100 um, max: 170 um}
Fails
    systems.cab.layers.primer.film: {min: 40 um, nominal: 60 um, max: 100 um}    # at systems.cab.layers.primer.film.max

    systems.cab.layers.primer.film: {min: 30 um, nominal: 60 um, max: 80 um}    # at systems.cab.layers.primer.film.min
To put right
    Stay inside the product's range, or choose another product.
"""

from specgen.rules.kit import ERROR, LOGIC, Problem, Problems, Spec, System, date, rule


@rule("FLM003", on=System, severity=ERROR, source=LOGIC)
def inside_product_range(system: System, spec: Spec, on: date) -> Problems:
    for layer in system.layers:
        allowed, asked = spec.product_of(layer).film, layer.film
        if allowed.min is not None and asked.min is not None and asked.min < allowed.min:
            what = f"minimum {asked.min} is below the {allowed.min} the product {layer.product} needs"
            yield Problem(("layers", layer.id, "film", "min"), what)
        if allowed.max is not None and asked.max is not None and asked.max > allowed.max:
            what = f"maximum {asked.max} is above the {allowed.max} the product {layer.product} allows"
            yield Problem(("layers", layer.id, "film", "max"), what)
