"""FLM011 The remaining DFT after sanding and polishing is sufficient

Checks
    The minimum DFT of each coat, or else of its product, less what sanding and polishing remove, against the minimum remaining DFT; where the minimum is that of the product, this is a warning. A removal without a stated minimum remaining DFT cannot be assessed.
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
Fails
    systems.cab.layers.clear.polishing_removes: 12.7 um
    systems.cab.layers.clear.remaining_min: 40 um    # at systems.cab.layers.clear.remaining_min

    systems.cab.layers.clear.film: {nominal: 50 um, max: 70 um}
    systems.cab.layers.clear.polishing_removes: 12.7 um
    systems.cab.layers.clear.remaining_min: 40 um    # warning at systems.cab.layers.clear.remaining_min

    systems.cab.layers.primer.sanding_removes: 10 um    # note at systems.cab.layers.primer.remaining_min

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
from specgen.rules.kit import ERROR, LOGIC, NOTE, WARNING, Problem, Problems, Spec, System, date, rule, show
from specgen.trade.film import film_left


@rule("FLM011", on=System, severity=ERROR, source=LOGIC)
def film_after_sanding(system: System, spec: Spec, on: date) -> Problems:
    for layer in system.layers:
        removed = [film for film in (layer.sanding_removes, layer.polishing_removes) if film is not None]
        path = ("layers", layer.id, "remaining_min")
        if layer.remaining_min is None:
            if removed:
                what = f"the remaining DFT of {layer.id} cannot be assessed: film is removed, but no minimum remaining DFT is stated"
                yield Problem(path, what, "write remaining_min", severity=NOTE)
            continue
        least = film_limit(system, layer, spec, "min")
        if least is None:
            what = f"the remaining DFT of {layer.id} cannot be assessed: the coat has no minimum DFT"
            yield Problem(("layers", layer.id, "film", "min"), what, "write the minimum DFT of the coat", severity=NOTE)
            continue
        left = film_left(f"film-left-{system.id}-{layer.id}", least.given, removed)
        if left.quantity < layer.remaining_min:
            what = f"the minimum DFT{least.lender}, {show(least.value)}, leaves {show(left.quantity)} after removal; {show(layer.remaining_min)} is required"
            # a film above the minimum may leave enough, and the coat does not state this one
            yield Problem(path, what, severity=WARNING if least.borrowed else None)
