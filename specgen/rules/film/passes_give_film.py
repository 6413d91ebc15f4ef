"""FLM007 The planned passes give the planned film

Checks
    Passes times the film per pass of the product or its variant, against the layer's minimum and maximum.
Why
    The painter counts passes, not micrometres: a count that does not give the film gives a wrong panel with a clear conscience.
Passes
    systems.cab.layers.primer.passes: 5
Fails
    systems.cab.layers.primer.passes: 2    # at systems.cab.layers.primer.passes

    systems.cab.layers.primer.passes: 6    # at systems.cab.layers.primer.passes
To put right
    Passes are the nominal film divided by the film of one pass, rounded up; then check the maximum.
"""

from specgen.rules.kit import LOGIC, WARNING, Layer, Problem, Problems, Quantity, Spec, System, date, rule


@rule("FLM007", on=System, severity=WARNING, source=LOGIC)
def passes_give_film(system: System, spec: Spec, on: date) -> Problems:
    for layer in system.layers:
        per_pass = film_per_pass(layer, spec)
        if layer.passes is None or per_pass is None:
            continue
        given = Quantity.of("thickness", per_pass.number * layer.passes, per_pass.unit)
        said = f"{layer.passes} passes of {per_pass} give {given}"
        if layer.film.min is not None and given < layer.film.min:
            yield Problem(("layers", layer.id, "passes"), f"{said}, below the minimum of {layer.film.min}")
        elif layer.film.max is not None and given > layer.film.max:
            yield Problem(("layers", layer.id, "passes"), f"{said}, above the maximum of {layer.film.max}")


def film_per_pass(layer: Layer, spec: Spec) -> Quantity | None:
    """The variant's film per pass where it states one, else the product's."""
    variant = spec.variant_of(layer)
    own = variant.overrides.per_pass if variant is not None and variant.overrides is not None else None
    return own or spec.product_of(layer).film.per_pass
