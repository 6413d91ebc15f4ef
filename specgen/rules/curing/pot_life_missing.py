"""CUR002 A mixed liquid states its pot life

Checks
    Every liquid two-pack has a pot life with its temperature.
Why
    Past its pot life mixed paint still sprays and looks sound, but does not bond or cure as tested.
Passes
    products.barrier.pot_life: {time: 6 h, air: 20 degC}
Fails
    without products.barrier.pot_life    # at products.barrier.pot_life
To put right
    Write the pot life, its temperature and the mixed volume it holds for, from the product's own tests.
"""

from __future__ import annotations

from collections.abc import Iterator

from specgen.findings import Severity
from specgen.model.product import CuringKind, Product
from specgen.model.senses import Concern
from specgen.model.spec import Spec
from specgen.rules.declare import Problem, rule
from specgen.standards.citations import LOGIC


@rule("CUR002", on=Product, severity=Severity.ERROR, concern=Concern.PRODUCT, source=LOGIC)
def pot_life_missing(product: Product, spec: Spec) -> Iterator[Problem]:
    if product.curing is CuringKind.LIQUID_TWO_PACK and product.pot_life is None:
        yield Problem(("pot_life",), f"the liquid two-pack {product.id} states no pot life")
