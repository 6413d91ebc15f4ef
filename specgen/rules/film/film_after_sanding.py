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

from __future__ import annotations

from collections.abc import Iterator

from specgen.findings import Severity
from specgen.model.senses import Concern
from specgen.model.spec import Spec
from specgen.model.system import System
from specgen.rules.declare import Problem, rule
from specgen.standards.citations import LOGIC
from specgen.trade.film import film_left
from specgen.units.display import show


@rule("FLM011", on=System, severity=Severity.ERROR, concern=Concern.FILM, source=LOGIC)
def film_after_sanding(system: System, spec: Spec) -> Iterator[Problem]:
    for layer in system.layers:
        removed = [film for film in (layer.sanding_removes, layer.polishing_removes) if film is not None]
        path = ("layers", layer.id, "least_after")
        if layer.least_after is None:
            if removed:
                what = f"film is taken off {layer.id}, but the least film left is not stated, so it cannot be judged"
                yield Problem(path, what, "write least_after", severity=Severity.NOTE)
            continue
        if layer.film.min is None:
            what = f"the layer {layer.id} has no minimum, so the film left cannot be judged"
            yield Problem(("layers", layer.id, "film", "min"), what, "write the minimum", severity=Severity.NOTE)
            continue
        left = film_left(f"film-left-{system.id}-{layer.id}", layer.film.min, removed)
        if left.quantity < layer.least_after:
            what = f"the minimum of {show(layer.film.min)} leaves {show(left.quantity)}, but {show(layer.least_after)} are asked"
            yield Problem(path, what)
