"""REL001 Drying stages are stated in their order

Checks
    The drying stages a product states for one air temperature and DFT: dust-free, touch-dry, dry to handle, fully cured, and through-dry between touch-dry and fully cured; none is reached before an earlier one.
Why
    A film that is handled before it is touch-dry does not exist: one of the two times is a slip, and the shop relies on the shorter one.
Passes
    products.primer.drying.touch: {id: touch, stage: touch-dry, time: 20 min, air: 20 degC}

    products.primer.drying.touch: {id: touch, stage: touch-dry, time: 15 min, air: 25 degC}

    products.primer.drying.through: {id: through, stage: through-dry, time: 6 h, air: 10 degC}
Fails
    products.primer.drying.touch: {id: touch, stage: touch-dry, time: 19 min, air: 20 degC}    # at products.primer.drying.touch.time

    products.primer.drying.through: {id: through, stage: through-dry, time: 15 min, air: 20 degC}    # at products.primer.drying.through.time

    Given second good
    products.gloss.drying.cure: {id: cure, stage: fully-cured, time: 15 h, air: 50 degF}    # at products.gloss.drying.cure.time
To put right
    Correct the time from the manufacturer's data.
"""

from specgen.facts.product.drying import spoken
from specgen.model.drying import Drying, DryingStage
from specgen.rules.kit import PRACTICE, WARNING, Problem, Problems, Product, Spec, date, rule
from specgen.units.quantity import lower, upper

_ORDERS = (
    (DryingStage.DUST_FREE, DryingStage.TOUCH_DRY, DryingStage.HANDLING, DryingStage.FULLY_CURED),
    (DryingStage.DUST_FREE, DryingStage.TOUCH_DRY, DryingStage.THROUGH, DryingStage.FULLY_CURED),
)


@rule("REL001", on=Product, severity=WARNING, source=PRACTICE)
def stages_in_order(product: Product, spec: Spec, on: date) -> Problems:
    for later in product.drying:
        before = [entry for entry in product.drying if _is_before(entry, later) and _alike(entry, later)]
        longest = max(before, key=lambda entry: lower(entry.time), default=None)
        if longest is not None and upper(later.time) < lower(longest.time):
            what = f"{product.id} is {spoken(later.stage)} after {later.time}, but {spoken(longest.stage)} only after {longest.time} at {later.air}"
            yield Problem(("drying", later.id, "time"), what)


def _is_before(one: Drying, other: Drying) -> bool:
    return any(
        one.stage in order and other.stage in order and order.index(one.stage) < order.index(other.stage)
        for order in _ORDERS
    )


def _alike(one: Drying, other: Drying) -> bool:
    """True where two times are of one air and, as far as both state it, of one film and humidity."""
    pairs = ((one.film, other.film), (one.humidity, other.humidity))
    return one.air == other.air and all(a is None or b is None or a == b for a, b in pairs)
