"""LAY004 A layer uses its product as the maker means it

Checks
    The role of each layer is among the roles its product states.
Why
    Outside its roles nobody has tested the product and nobody stands behind it.
Passes
    systems.chassis.layers.barrier.role: top-coat
Fails
    systems.chassis.layers.barrier.role: filler    # at systems.chassis.layers.barrier.role
To put right
    Choose a product with that role, or correct the role of the layer.
"""

from __future__ import annotations

from collections.abc import Iterator

from specgen.findings import Severity
from specgen.model.senses import Concern
from specgen.model.spec import Spec
from specgen.model.system import System
from specgen.rules.declare import Problem, rule
from specgen.standards.citations import LOGIC


@rule("LAY004", on=System, severity=Severity.ERROR, concern=Concern.COMPATIBILITY, source=LOGIC)
def role_of_product(system: System, spec: Spec) -> Iterator[Problem]:
    for layer in system.layers:
        roles = spec.product_of(layer).roles
        if layer.role not in roles:
            what = f"the product {layer.product} is no {layer.role}; it is made as {', '.join(roles)}"
            yield Problem(("layers", layer.id, "role"), what)
