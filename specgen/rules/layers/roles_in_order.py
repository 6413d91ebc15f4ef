"""LAY001 Coats follow in the usual order

Checks
    The order of the layers' roles from the substrate up: wash primer, adhesion promoter, primer, body filler, filler, sealer, base coat, top coat, clear. Body filler may also stand below the primer.
Why
    A coat in the wrong place lies on a surface it was not made for: a primer on a top coat seals in nothing and a base coat under a filler is sanded away.
Passes
    systems.cab.layers.primer.role: primer
Fails
    systems.cab.layers.primer.role: sealer    # also LAY004 at systems.cab.layers.primer.role
    systems.cab.layers.base.role: primer    # at systems.cab.layers.base.role    # also LAY004 at systems.cab.layers.base.role    # also LAY003 at systems.cab.layers.clear.role
To put right
    Put the layers in order from the metal outwards, or correct the role.
"""

from __future__ import annotations

from collections.abc import Iterator

from specgen.findings import Severity
from specgen.model.product import Role
from specgen.model.senses import Concern
from specgen.model.spec import Spec
from specgen.model.system import System
from specgen.rules.declare import Problem, rule
from specgen.standards.citations import PRACTICE

_RANK = {role: rank for rank, role in enumerate(Role)}
# Body shops fill bare metal or cured primer, and both are in the books.
_EITHER_WAY = {Role.PRIMER, Role.BODY_FILLER}


@rule("LAY001", on=System, severity=Severity.WARNING, concern=Concern.COMPATIBILITY, source=PRACTICE)
def roles_in_order(system: System, spec: Spec) -> Iterator[Problem]:
    for below, above in zip(system.layers, system.layers[1:], strict=False):
        if {below.role, above.role} <= _EITHER_WAY:
            continue
        if _RANK[above.role] < _RANK[below.role]:
            what = f"the {above.role} {above.id} stands on the {below.role} {below.id}"
            yield Problem(("layers", above.id, "role"), what)
