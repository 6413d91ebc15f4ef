"""OVR003 A source covers each coat over the one below it

Checks
    Each coat over the one below: the product below states an overcoating interval for the one above by its name, the product above that it may go over that generic type, or a table or common practice covers the pair. An interval for any coat names nobody and covers no pair.
Why
    Where no public statement is found, the pair is neither accepted nor refused; a test panel must show whether it works.
Passes
    products.primer.binder: silicone_heat
    products.primer.service_temperature.continuous_max: 300 degC
    products.base.may_go_over: [silicone_heat]

    Given a zinc-rich primer on blasted steel
Fails
    products.primer.binder: silicone_heat    # at systems.cab.layers.base.product    # also LAY006 at systems.cab.layers.primer.overcoat_interval    # also USU001 at products.primer.service_temperature.continuous_max
    without products.primer.overcoat

    products.base.binder: silicone_heat
    products.clear.binder: acrylic_1k
    without products.base.overcoat    # at systems.cab.layers.clear.product    # also LAY006 at systems.cab.layers.base.overcoat_interval    # also OVR001 at systems.cab.layers.base.product    # also USU001 at products.base.service_temperature.continuous_max
To put right
    Coat a panel with both, leave it for a week, and assess it against a written limit; or ask the manufacturer for an overcoating interval.
"""

from specgen.facts.pairs.layers import layer_pairs
from specgen.facts.pairs.overcoat import Verdict
from specgen.rules.kit import LOGIC, NOTE, Problem, Problems, Spec, System, date, rule


@rule("OVR003", on=System, severity=NOTE, source=LOGIC)
def layer_not_covered(system: System, spec: Spec, on: date) -> Problems:
    for pair in layer_pairs(system, spec):
        if pair.verdict.verdict is not Verdict.NOT_LISTED or pair.told_elsewhere:
            continue
        if not pair.stated_by_name and not pair.allowed_by_above:
            what = f"{pair.above.id} over {pair.below.id} cannot be assessed: {pair.verdict.spoken()}, and no overcoating interval is stated for it by name"
            yield Problem(("layers", pair.above.id, "product"), what)
