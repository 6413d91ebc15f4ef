"""FLM010 The colour hides within the layer's maximum

Checks
    The film at which the variant, or else its product, hides fully, against the maximum of the layer, or else of the product.
Why
    Where the colour needs more film than it may have, the undercoat shows through or the coat is laid on too thick.
Passes
    products.base.film.hiding: 30 um
Fails
    products.base.film.hiding: 35 um    # at systems.cab.layers.base.film.max

    products.base.variants.standard.overrides: {hiding: 40 um}    # at systems.cab.layers.base.film.max
To put right
    Choose an undercoat nearer to the colour, more coats where the product allows them, or another colour.
"""

from specgen.rules.kit import ERROR, LOGIC, Problem, Problems, Spec, System, date, rule


@rule("FLM010", on=System, severity=ERROR, source=LOGIC)
def colour_hides(system: System, spec: Spec, on: date) -> Problems:
    for layer in system.layers:
        product, variant = spec.product_of(layer), spec.variant_of(layer)
        own = variant.overrides.hiding if variant is not None and variant.overrides is not None else None
        hiding, most = own or product.film.hiding, layer.film.max or product.film.max
        if hiding is not None and most is not None and hiding > most:
            what = f"{layer.variant or layer.product} hides fully at {hiding}, the layer {layer.id} has at most {most}"
            yield Problem(("layers", layer.id, "film", "max"), what)
