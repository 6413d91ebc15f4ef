"""HAZ032 A can is stored below 50 degC

Checks
    The maximum storage temperature of a can is stated and at most 50 degC; the minimum is below the maximum.
Why
    Heat raises the pressure until the can bursts.
Passes
    products.base.hazards.storage_min: 5 degC

    products.base.hazards.storage_max: 50 degC

    products.base.hazards.storage_max: 18 degC
    products.base.hazards.storage_min: 18 degC

    products.barrier.hazards.storage_max: 60 degC
Fails
    products.base.hazards.storage_max: 60 degC    # at products.base.hazards.storage_max

    products.barrier.hazards.storage_min: 18 degC    # at products.barrier.hazards.storage_min
    products.barrier.hazards.storage_max: 17 degC

    products.base.hazards.storage_max: 50.1 degC    # at products.base.hazards.storage_max

    Given second good
    products.touch-up.hazards.storage_max: 123 degF    # at products.touch-up.hazards.storage_max

    products.base.hazards.storage_min: 51 degC    # at products.base.hazards.storage_min    # at products.base.hazards.storage_min    # also USU001 at products.base.hazards.storage_min

    without products.base.hazards.storage_max
    products.base.hazards.storage_min: 51 degC    # note at products.base.hazards.storage_max    # at products.base.hazards.storage_min    # also USU001 at products.base.hazards.storage_min
To put right
    State the range from section 7 of the safety data sheet; for a can never above 50 degC.
"""

from fractions import Fraction

from specgen.facts.product.hazard_facts import package_of
from specgen.rules.kit import (
    ERROR,
    LOGIC,
    NOTE,
    Basis,
    Problem,
    Problems,
    Product,
    Quantity,
    Spec,
    cite,
    date,
    rule,
    table,
)


@rule(
    "HAZ032",
    on=Product,
    severity=ERROR,
    source=cite("CLP", "Annex I, Table 2.3.1, P410+P412", Basis.REGULATION),
    waivable=False,
)
def storage_below_50(product: Product, spec: Spec, on: date) -> Problems:
    hazards = product.hazards
    if hazards is None:
        return
    row = table("storage_limits").row("id", "warmest")
    most = Quantity.of("temperature", Fraction(row["figure"]), row["unit"])
    if package_of(product) == "aerosol":
        if hazards.storage_max is None:
            what = f"the maximum storage temperature of the can {product.id} is not stated; the limit is {most}"
            yield Problem(("hazards", "storage_max"), what, severity=NOTE)
        elif hazards.storage_max > most:
            what = (
                f"the maximum storage temperature of the can {product.id} is {hazards.storage_max}; the limit is {most}"
            )
            yield Problem(("hazards", "storage_max"), what)
        if hazards.storage_min is not None and hazards.storage_min > most:
            yield Problem(
                ("hazards", "storage_min"), f"the minimum storage temperature of the can {product.id} is above {most}"
            )
    if (
        hazards.storage_max is not None
        and hazards.storage_min is not None
        and hazards.storage_min > hazards.storage_max
    ):
        what = f"the minimum storage temperature {hazards.storage_min} is above the maximum, {hazards.storage_max}"
        yield Problem(("hazards", "storage_min"), what, source=LOGIC)
