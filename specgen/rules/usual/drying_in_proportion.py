"""USU004 Drying stages stand in a usual proportion

Checks
    The times of two successive drying stages that a product states for one air temperature: the later one is at most ten times as long from dust-free to touch-dry, forty times from there to dry-to-handle or through-dry, and a hundred times from there to fully cured, 170 times of zinc-rich paint; what lies between two stages is multiplied. From 60 degC on a paint that is not stoved takes a day at most to any stage.
Why
    The stages of one film follow from the same drying. One that lies far from the others has most often hours for minutes, or days for hours.
Passes
    products.primer.drying.touch: {id: touch, stage: touch-dry, time: 200 min, air: 20 degC}
    systems.cab.layers.base.mist_coat: yes

    products.primer.drying.cure: {id: cure, stage: fully-cured, time: 33 h, air: 20 degC}

    products.primer.drying.touch: {id: touch, stage: touch-dry, time: 201 min, air: 25 degC}
    systems.cab.layers.base.mist_coat: yes

    products.primer.drying.handle: {id: handle, stage: dry-to-handle, time: 3 h, air: 20 degC}
    products.primer.drying.cure: {id: cure, stage: fully-cured, time: 300 h, air: 20 degC}

    Given a zinc-rich primer on blasted steel
    products.primer.drying.handle: {id: handle, stage: dry-to-handle, time: 1 h, air: 20 degC}
    products.primer.drying.cure: {id: cure, stage: fully-cured, time: 170 h, air: 20 degC}
Fails
    products.primer.drying.touch: {id: touch, stage: touch-dry, time: 201 min, air: 20 degC}    # at products.primer.drying.touch.time
    systems.cab.layers.base.mist_coat: yes

    products.primer.drying.oven: {id: oven, stage: fully-cured, time: 25 h, air: 60 degC}    # at products.primer.drying.oven.air    # also USU002 at products.primer.drying.oven.air    # also REL008 at jobs.refit.scope

    products.primer.drying.touch: {id: touch, stage: touch-dry, time: 40 min, air: 20 degC}
    systems.cab.layers.base.mist_coat: yes
    products.primer.drying.handle: {id: handle, stage: dry-to-handle, time: 27 h, air: 20 degC}    # at products.primer.drying.handle.time    # also USU003 at products.primer.drying.hand.time

    products.primer.drying.handle: {id: handle, stage: dry-to-handle, time: 3 h, air: 20 degC}
    products.primer.drying.cure: {id: cure, stage: fully-cured, time: 301 h, air: 20 degC}    # at products.primer.drying.cure.time

    Given a zinc-rich primer on blasted steel
    products.primer.drying.handle: {id: handle, stage: dry-to-handle, time: 1 h, air: 20 degC}
    products.primer.drying.cure: {id: cure, stage: fully-cured, time: 171 h, air: 20 degC}    # at products.primer.drying.cure.time
To put right
    Compare the times with the product's own tests, and correct the figure or its unit.
"""

from itertools import pairwise
from math import prod

from specgen.facts.usual import proportion
from specgen.model.drying import Drying, DryingStage
from specgen.rules.kit import PRACTICE, WARNING, Problem, Problems, Product, Spec, date, rule
from specgen.units.quantity import lower, upper

# how far a film has dried, and the row that says by how much more time the next step takes at most
_DEPTH = {
    DryingStage.DUST_FREE: 0,
    DryingStage.TOUCH_DRY: 1,
    DryingStage.HANDLING: 2,
    DryingStage.THROUGH: 2,
}
_STEPS = ("touch", "handle", "cured")
_WITHIN = ("handle",)
_STOVED = {"silicone_heat", "powder", "ecoat", "oem_finish", "stoving_enamel"}
_ZINC_RICH = {"zinc_organic", "zinc_inorganic", "zinc_pu"}


@rule("USU004", on=Product, severity=WARNING, source=PRACTICE)
def drying_in_proportion(product: Product, spec: Spec, on: date) -> Problems:
    rows: dict[object, list[Drying]] = {}
    for entry in product.drying:
        if product.binder not in _STOVED and lower(entry.air).to("degC") >= proportion("oven"):
            yield from _too_long(entry)
        rows.setdefault((lower(entry.air), entry.film), []).append(entry)
    for entries in rows.values():
        row = sorted(entries, key=lambda entry: tuple(DryingStage).index(entry.stage))
        for before, after in pairwise(row):
            if before.stage is after.stage:
                continue
            steps = _STEPS[_DEPTH[before.stage] : _DEPTH.get(after.stage)] or _WITHIN
            zinc = product.binder in _ZINC_RICH
            most = prod(proportion("cured_zinc" if zinc and step == "cured" else step) for step in steps)
            if lower(after.time).base > most * upper(before.time).base:
                what = f"{after.stage} after {after.time}, {before.stage} after {before.time}"
                yield Problem(("drying", after.id, "time"), f"{what}; at most {most} times as long is usual")


def _too_long(entry: Drying) -> Problems:
    most = proportion("oven_time")
    if lower(entry.time).to("h") > most:
        what = f"{entry.stage} after {entry.time} at {entry.air}; in such heat at most {most} h is usual"
        yield Problem(("drying", entry.id, "air"), what)
