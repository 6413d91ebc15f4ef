"""USU004 Drying stages stand in a usual proportion

Checks
    The times of two successive drying stages that a product states for one air temperature: the later one is at most ten times as long from dust-free to touch-dry, forty times to dry-to-handle or through-dry, and a hundred times to fully cured.
Why
    The stages of one film follow from the same drying. One that lies far from the others has most often hours for minutes, or days for hours.
Passes
    products.primer.drying.touch: {id: touch, stage: touch-dry, time: 200 min, air: 20 degC}

    products.primer.drying.cure: {id: cure, stage: fully-cured, time: 33 h, air: 20 degC}

    products.primer.drying.touch: {id: touch, stage: touch-dry, time: 201 min, air: 25 degC}
Fails
    products.primer.drying.touch: {id: touch, stage: touch-dry, time: 201 min, air: 20 degC}    # at products.primer.drying.touch.time

    products.primer.drying.touch: {id: touch, stage: touch-dry, time: 40 min, air: 20 degC}
    products.primer.drying.handle: {id: handle, stage: dry-to-handle, time: 27 h, air: 20 degC}    # at products.primer.drying.handle.time

    products.primer.drying.handle: {id: handle, stage: dry-to-handle, time: 3 h, air: 20 degC}
    products.primer.drying.cure: {id: cure, stage: fully-cured, time: 13 days, air: 20 degC}    # at products.primer.drying.cure.time
To put right
    Compare the times with the product's own tests, and correct the figure or its unit.
"""

from itertools import pairwise

from specgen.model.product import Drying, DryingStage
from specgen.rules.kit import PRACTICE, WARNING, Problem, Problems, Product, Spec, date, rule
from specgen.units.quantity import lower, upper

_ORDER = tuple(DryingStage)
# by the later of two stages, how many times as long as the one before it may be
_MOST = {
    DryingStage.TOUCH_DRY: 10,
    DryingStage.HANDLING: 40,
    DryingStage.THROUGH: 40,
    DryingStage.FULLY_CURED: 100,
}


@rule("USU004", on=Product, severity=WARNING, source=PRACTICE)
def drying_in_proportion(product: Product, spec: Spec, on: date) -> Problems:
    rows: dict[object, list[Drying]] = {}
    for entry in product.drying:
        rows.setdefault((lower(entry.air), entry.film), []).append(entry)
    for entries in rows.values():
        row = sorted(entries, key=lambda entry: _ORDER.index(entry.stage))
        for before, after in pairwise(row):
            if after.stage is before.stage:
                continue
            most = _MOST[after.stage]
            if lower(after.time).base > most * upper(before.time).base:
                what = f"{after.stage} after {after.time}, {before.stage} after {before.time}"
                yield Problem(("drying", after.id, "time"), f"{what}; at most {most} times as long is usual")
