"""HAZ027 H304 is not needed on a can

Checks
    H304 among the statements of a can.
Why
    From a can nothing is swallowed by the mouthful, so the statement may be left out there.
Passes
    products.barrier.roles: [primer, top-coat]
Fails
    products.base.hazards.statements: [H222, H229, H304, H319, H336]    # at products.base.hazards.statements    # also HAZ013 at products.base.hazards.statements
To put right
    Leave it out of the label, or keep it; the class stays in section 2 of the safety data sheet.
"""

from __future__ import annotations

from collections.abc import Iterator

from specgen.findings import Severity
from specgen.model.product import Product
from specgen.model.senses import Concern
from specgen.model.spec import Spec
from specgen.plan.hazard_facts import package_of
from specgen.rules.declare import Problem, rule
from specgen.standards.citations import Basis, cite
from specgen.standards.tables import table


@rule(
    "HAZ027",
    on=Product,
    severity=Severity.NOTE,
    concern=Concern.SAFETY,
    source=cite("CLP", "Annex I, 1.3.3", Basis.MEMORY),
)
def aspiration_on_aerosol(product: Product, spec: Spec) -> Iterator[Problem]:
    if product.hazards is None or package_of(product) != "aerosol":
        return
    for row in table("aerosol_exclusions").rows:
        if row["effect"] == "not needed" and row["code"] in product.hazards.statements:
            yield Problem(("hazards", "statements"), f"{row['code']} is not needed on the can {product.id}")
