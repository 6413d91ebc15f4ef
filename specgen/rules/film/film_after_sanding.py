"""FLM011 The remaining DFT after sanding and polishing is sufficient

Checks
    The minimum DFT of each coat, or else of its product, less what sanding and polishing remove, against the minimum remaining DFT; where the minimum is that of the product, this is a warning. Where no minimum remaining DFT is stated, something has to remain, and less than the minimum of the product is a warning; but not of a body filler, which is sanded to nothing at its rim.
Why
    Film removed by sanding or polishing no longer protects; a clearcoat polished too thin chalks within two summers.
Passes
    systems.cab.layers.clear.polishing_removes: 12.7 um
    systems.cab.layers.clear.remaining_min: 25 um

    systems.cab.layers.clear.film: {nominal: 50 um, max: 70 um}
    systems.cab.layers.clear.polishing_removes: 12.7 um
    systems.cab.layers.clear.remaining_min: 25 um

    systems.cab.layers.primer.sanding_removes: 5 um
    systems.cab.layers.primer.polishing_removes: 5 um
    systems.cab.layers.primer.remaining_min: 30 um

    systems.cab.layers.primer.film: {min: 50 um, nominal: 60 um, max: 80 um}
    systems.cab.layers.primer.sanding_removes: 10 um
    systems.cab.total.min: 100 um
    jobs.refit.inspection.primer-film.criterion.min: 40 um

    Given a body filler under a primer
    systems.chassis.layers.fill.sanding_removes: 60 um
Fails
    Given a body filler under a primer
    systems.chassis.layers.fill.sanding_removes: 60 um
    systems.chassis.layers.fill.remaining_min: 1 um    # at systems.chassis.layers.fill.remaining_min

    systems.cab.layers.primer.film: {min: 49.9 um, nominal: 60 um, max: 80 um}
    systems.cab.layers.primer.sanding_removes: 10 um    # warning at systems.cab.layers.primer.remaining_min
    systems.cab.total.min: 100 um

    systems.cab.layers.clear.polishing_removes: 40 um    # at systems.cab.layers.clear.remaining_min

    systems.cab.layers.clear.polishing_removes: 12.7 um
    systems.cab.layers.clear.remaining_min: 40 um    # at systems.cab.layers.clear.remaining_min

    systems.cab.layers.clear.film: {nominal: 50 um, max: 70 um}
    systems.cab.layers.clear.polishing_removes: 12.7 um
    systems.cab.layers.clear.remaining_min: 40 um    # warning at systems.cab.layers.clear.remaining_min

    systems.cab.layers.primer.sanding_removes: 10 um    # note at systems.cab.layers.primer.film.min    # also FLM021 at systems.cab.layers.primer.film.min
    systems.cab.layers.primer.film: {nominal: 60 um, max: 80 um}
    without products.primer.film.min
    jobs.refit.inspection.primer-film.criterion: {rule: own, max: 80 um, text: even}

    systems.cab.layers.primer.sanding_removes: 5 um
    systems.cab.layers.primer.polishing_removes: 5 um
    systems.cab.layers.primer.remaining_min: 30.1 um    # at systems.cab.layers.primer.remaining_min

    Given a coat with no film limits at all
    systems.cab.layers.base.remaining_min: 10 um    # note at systems.cab.layers.base.film.min
    systems.cab.layers.clear.polishing_removes: 12.7 um
    systems.cab.layers.clear.remaining_min: 40 um    # at systems.cab.layers.clear.remaining_min
To put right
    Raise the minimum DFT of the coat by the amount removed, or limit the amount removed.
"""

from specgen.facts.layer.film import film_limit
from specgen.facts.layer.left import exact, left_after_removal, removals
from specgen.rules.kit import (
    ERROR,
    LOGIC,
    NOTE,
    WARNING,
    Layer,
    Problem,
    Problems,
    Quantity,
    Role,
    Spec,
    System,
    date,
    rule,
    show,
)


@rule("FLM011", on=System, severity=ERROR, source=LOGIC)
def film_after_sanding(system: System, spec: Spec, on: date) -> Problems:
    for layer in system.layers:
        if removals(layer) or layer.remaining_min is not None:
            yield from _left(system, layer, spec)


def _left(system: System, layer: Layer, spec: Spec) -> Problems:
    least, path = film_limit(system, layer, spec, "min"), ("layers", layer.id, "remaining_min")
    if least is None:
        what = f"the remaining DFT of {layer.id} cannot be assessed: the coat has no minimum DFT"
        yield Problem(("layers", layer.id, "film", "min"), what, "write the minimum DFT of the coat", severity=NOTE)
        return
    worked_out = left_after_removal(system, layer, spec, "min")
    left = exact(worked_out) if worked_out is not None else least.value
    work = " and ".join(word for word, film in _removed(layer) if film is not None)
    said = f"the minimum DFT{least.lender}, {show(least.value)}, leaves {show(left)}{f' after {work}' if work else ''}"
    # a film above the minimum may leave enough, and the coat does not state this one
    weight = WARNING if least.borrowed else None
    if layer.remaining_min is not None:
        if left < layer.remaining_min:
            yield Problem(path, f"{said}; at least {show(layer.remaining_min)} has to remain", severity=weight)
        return
    if layer.role is Role.BODY_FILLER:
        return
    of_product = spec.product_of(layer).film.min
    if left.base <= 0:
        yield Problem(path, f"{said}: nothing of the coat has to remain", severity=weight)
    elif of_product is not None and left < of_product:
        what = f"{said}; the minimum of the product {layer.product} is {show(of_product)}, and no minimum remaining DFT is stated"
        yield Problem(path, what, "write remaining_min, or raise the minimum DFT of the coat", WARNING)


def _removed(layer: Layer) -> tuple[tuple[str, Quantity | None], ...]:
    return ("sanding", layer.sanding_removes), ("polishing", layer.polishing_removes)
