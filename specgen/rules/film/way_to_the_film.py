"""FLM020 Each coat says how its film is reached

Checks
    Each layer states its passes, its coats or the wet film to aim at.
Why
    A sprayer cannot see a dry film; passes and comb are how it is reached.
Passes
    without systems.cab.layers.base.passes
    systems.cab.layers.base.wet_target: 80 um
Fails
    without systems.cab.layers.base.passes    # at systems.cab.layers.base.passes
To put right
    Write passes: with the number of cross coats, or wet_target: with the wet film for the comb.
"""

from __future__ import annotations

from collections.abc import Iterator

from specgen.findings import Severity
from specgen.model.senses import Concern
from specgen.model.spec import Spec
from specgen.model.system import System
from specgen.rules.declare import Problem, rule
from specgen.standards.citations import LOGIC


@rule("FLM020", on=System, severity=Severity.NOTE, concern=Concern.FILM, source=LOGIC)
def way_to_the_film(system: System, spec: Spec) -> Iterator[Problem]:
    for layer in system.layers:
        if layer.passes is None and layer.coats is None and layer.wet_target is None:
            what = f"the coat {layer.id} does not say in how many passes its film is laid"
            yield Problem(("layers", layer.id, "passes"), what)
