"""FLM011 Enough film is left after sanding and polishing

Checks
    The minimum of each layer, or else of its product, less what sanding and polishing take off, against the least film that has to be left; where it is the product's this warns. A removal without that least film cannot be judged.
Why
    Film that is sanded or polished away no longer protects; a clear polished too thin chalks within two summers.
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
    Raise the minimum of the layer by what is taken off, or limit what may be taken off.
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
                what = f"film is taken off {layer.id}, but the least film left is not stated, so it cannot be judged"
                yield Problem(path, what, "write remaining_min", severity=NOTE)
            continue
        least = film_limit(system, layer, spec, "min")
        if least is None:
            what = f"the layer {layer.id} has no minimum, so the film left cannot be judged"
            yield Problem(("layers", layer.id, "film", "min"), what, "write the minimum", severity=NOTE)
            continue
        left = film_left(f"film-left-{system.id}-{layer.id}", least.given, removed)
        if left.quantity < layer.remaining_min:
            what = f"the minimum of {show(least.value)}{least.lender} leaves {show(left.quantity)}, but {show(layer.remaining_min)} are asked"
            # a film above the minimum may leave enough, and the layer did not ask for this one
            yield Problem(path, what, severity=WARNING if least.borrowed else None)
