"""When a coat can be handled, at the temperature most like a shop's: the row that flatters most is not the one to show.

Called by `product_nature` and `range_overview`.
"""

from __future__ import annotations

from fractions import Fraction

from specgen.model.drying import Drying, DryingStage
from specgen.model.product import Product
from specgen.units.quantity import Quantity, as_range, upper

# Drying times are compared at this air temperature throughout the trade (common practice, no source).
USUAL_AIR = Quantity.of("temperature", 20, "degC", "20")


def handling(product: Product) -> Drying | None:
    """The stated time to handle nearest to 20 degC; of two as near, the longer. None where none is stated."""
    stated = [entry for entry in product.drying if entry.stage is DryingStage.HANDLING]
    return min(stated, key=lambda entry: (_away(entry), -upper(entry.time).base), default=None)


def _away(entry: Drying) -> Fraction:
    """How far the air of the entry lies from 20 degC; a band with it lies no distance away."""
    air = as_range(entry.air)
    if air.holds(USUAL_AIR):
        return Fraction(0)
    return min(abs(end.base - USUAL_AIR.base) for end in (air.low, air.high) if end is not None)
