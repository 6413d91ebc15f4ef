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


@rule("FLM007", on=System, severity=WARNING, source=LOGIC)
def passes_give_film(system: System, spec: Spec, on: date) -> Problems:
    for layer in system.layers:
        of_pass = film_of_variant(spec.product_of(layer), spec.variant_of(layer), "per_pass")
        if layer.passes is None or of_pass is None:
            continue
        least, most = film_limit(system, layer, spec, "min"), film_limit(system, layer, spec, "max")
        thinnest, thickest = _film(of_pass.value, layer.passes.low), None
        if layer.passes.high is not None:
            thickest = _film(of_pass.value, layer.passes.high)
        film = thinnest if thickest is None or (most is not None and thinnest > most.value) else thickest
        path, one = ("layers", layer.id, "passes"), layer.passes.one == 1
        passes = f"{layer.passes} {'cross coat' if one else 'cross coats'} of {of_pass.value}"
        told = f"{passes} {'gives' if one else 'give'} a DFT of {film}"
        # of a range of passes one that meets the limits is enough
        if least is not None and thickest is not None and thickest < least.value:
            yield Problem(path, f"{told}, below the minimum{least.lender}, {least.value}")
        elif most is not None and thinnest > most.value:
            yield Problem(path, f"{told}, above the maximum{most.lender}, {most.value}")


def _film(of_pass: Quantity, passes: int) -> Quantity:
    return Quantity.of("thickness", of_pass.number * passes, of_pass.unit)
