"""FLM007 The planned cross coats give the specified DFT

Checks
    The number of cross coats times the DFT per cross coat of the product or its variant, against the minimum and maximum DFT of the coat, or else of its product.
Why
    The painter counts cross coats, not micrometres: a number that does not give the specified DFT makes a faulty panel although the instruction was followed.
Passes
    systems.cab.layers.primer.passes: 5

    systems.cab.layers.clear.film: {min: 51 um, nominal: 55 um, max: 70 um}
    without systems.cab.total

    systems.cab.layers.clear.film: {min: 40 um, nominal: 50 um, max: 51 um}
    without systems.cab.total
Fails
    systems.cab.layers.primer.passes: 2    # at systems.cab.layers.primer.passes

    systems.cab.layers.primer.passes: 6    # at systems.cab.layers.primer.passes

    systems.cab.layers.primer.passes: 2    # at systems.cab.layers.primer.passes
    systems.cab.layers.primer.film: {nominal: 60 um}

    systems.cab.layers.clear.passes: 2    # at systems.cab.layers.clear.passes
    without systems.cab.layers.base.passes
    systems.cab.layers.base.coats: 1

    Given second good
    systems.touch.layers.face.passes: 2    # at systems.touch.layers.face.passes

    Given second good
    systems.touch.layers.face.passes: 4    # at systems.touch.layers.face.passes
To put right
    The number of cross coats is the nominal DFT divided by the DFT per cross coat, rounded up; then check the maximum.
"""

from specgen.facts.layer.film import film_limit, film_of_variant
from specgen.rules.kit import LOGIC, WARNING, Problem, Problems, Quantity, Spec, System, date, rule
from specgen.units.locale import counted


@rule("FLM007", on=System, severity=WARNING, source=LOGIC)
def passes_give_film(system: System, spec: Spec, on: date) -> Problems:
    for layer in system.layers:
        of_pass = film_of_variant(spec.product_of(layer), spec.variant_of(layer), "per_pass")
        if layer.passes is None or of_pass is None:
            continue
        film = Quantity.of("thickness", of_pass.value.number * layer.passes, of_pass.value.unit)
        path, told = (
            ("layers", layer.id, "passes"),
            f"{layer.passes} {counted('cross coat', 'cross coats', layer.passes)} of {of_pass.value} {counted('gives', 'give', layer.passes)} a DFT of {film}",
        )
        least, most = film_limit(system, layer, spec, "min"), film_limit(system, layer, spec, "max")
        if least is not None and film < least.value:
            yield Problem(path, f"{told}, below the minimum{least.lender}, {least.value}")
        elif most is not None and film > most.value:
            yield Problem(path, f"{told}, above the maximum{most.lender}, {most.value}")
