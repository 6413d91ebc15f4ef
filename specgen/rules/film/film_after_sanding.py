"""FLM011 Enough film is left after sanding and polishing

Checks
    The minimum of each layer, less what sanding and polishing take off, against the least film that has to be left. A removal without that least film cannot be judged.
Why
    Film that is sanded or polished away no longer protects; a clear polished too thin chalks within two summers.
Passes
    systems.cab.layers.clear.polishing_removes: 12.7 um
    systems.cab.layers.clear.least_after: 25 um
Fails
    systems.cab.layers.clear.polishing_removes: 12.7 um
    systems.cab.layers.clear.least_after: 40 um    # at systems.cab.layers.clear.least_after

    systems.cab.layers.primer.sanding_removes: 10 um    # at systems.cab.layers.primer.least_after
To put right
    Raise the minimum of the layer by what is taken off, or limit what may be taken off.
"""

from specgen.rules.kit import ERROR, LOGIC, NOTE, Problem, Problems, Spec, System, date, rule, show
from specgen.trade.film import film_left


@rule("FLM011", on=System, severity=ERROR, source=LOGIC)
def film_after_sanding(system: System, spec: Spec, on: date) -> Problems:
    for layer in system.layers:
        removed = [film for film in (layer.sanding_removes, layer.polishing_removes) if film is not None]
        path = ("layers", layer.id, "least_after")
        if layer.least_after is None:
            if removed:
                what = f"film is taken off {layer.id}, but the least film left is not stated, so it cannot be judged"
                yield Problem(path, what, "write least_after", severity=NOTE)
            continue
        if layer.film.min is None:
            what = f"the layer {layer.id} has no minimum, so the film left cannot be judged"
            yield Problem(("layers", layer.id, "film", "min"), what, "write the minimum", severity=NOTE)
            continue
        left = film_left(f"film-left-{system.id}-{layer.id}", layer.film.min, removed)
        if left.quantity < layer.least_after:
            what = f"the minimum of {show(layer.film.min)} leaves {show(left.quantity)}, but {show(layer.least_after)} are asked"
            yield Problem(path, what)
