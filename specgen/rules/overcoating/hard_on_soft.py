"""OVR006 No hard coat on a flexible one

Checks
    Layers that state whether they are flexible: a layer said not to be flexible does not lie on one that is.
Why
    The soft coat moves with heat and bending, the hard one on it cannot follow and cracks in a fine net.
Passes
    systems.cab.layers.primer.flexible: yes
    systems.cab.layers.base.flexible: yes
Fails
    systems.cab.layers.primer.flexible: yes    # at systems.cab.layers.base.flexible
    systems.cab.layers.base.flexible: no
To put right
    Lay coats of one hardness, or grade them from hard below to soft on top.
"""

from __future__ import annotations

from collections.abc import Iterator

from specgen.findings import Severity
from specgen.model.senses import Concern
from specgen.model.spec import Spec
from specgen.model.system import System
from specgen.plan.overcoat import table_row
from specgen.rules.declare import Problem, rule


@rule(
    "OVR006",
    on=System,
    severity=Severity.WARNING,
    concern=Concern.COMPATIBILITY,
    source=table_row("mechanisms", "checking"),
)
def hard_on_soft(system: System, spec: Spec) -> Iterator[Problem]:
    for below, above in zip(system.layers, system.layers[1:], strict=False):
        if below.flexible and above.flexible is False:
            what = f"the hard coat {above.id} lies on the flexible {below.id}"
            yield Problem(("layers", above.id, "flexible"), what)
