"""OVR001 A coat is compatible with the one below it

Checks
    Each coat over the one below, by generic type, in the published tables and then in common practice. Where the product below states an overcoating interval for that very product above, or the one above that it may go over the generic type below (may_go_over), the statement of the manufacturer takes precedence over the tables; an interval for any coat does not.
Why
    Coats that lift, bleed, crack or peel on each other do so on every vehicle of the fleet.
Passes
    products.base.binder: surfacer_2k
    products.base.hazards.isocyanates: {contained: no}
    products.base.hazards.epoxy_up_to_700: no

    products.base.overcoat: [{id: clear, next_coat: clear, interval: 20 min..24 h, air: 15 degC}]
    products.base.binder: nitrocellulose
    products.primer.overcoat.base: {id: base, next_coat: base, interval: 30 min..24 h, air: 15 degC}
    products.primer.hazards.epoxy_up_to_700: yes

    products.base.binder: nitrocellulose
    products.clear.may_go_over: [nitrocellulose]
    products.base.overcoat: [{id: any, next_coat: any, interval: 20 min..24 h, air: 15 degC}]
Fails
    products.base.binder: nitrocellulose    # warning at systems.cab.layers.clear.product
    products.clear.may_go_over: [basecoat]    # also OVR007 at systems.cab.layers.clear.product
    products.base.overcoat: [{id: any, next_coat: any, interval: 20 min..24 h, air: 15 degC}]

    products.base.binder: nitrocellulose    # warning at systems.cab.layers.clear.product
    products.base.overcoat: [{id: any, next_coat: any, interval: 20 min..24 h, air: 15 degC}]

    products.primer.binder: oil_alkyd    # at systems.cab.layers.base.product

    Given second good
    products.mastic.binder: silicone_heat
    products.gloss.binder: pu_2k_aliphatic    # warning at systems.deck.layers.gloss.product    # also OLD013 at jobs.rails.items.LOCKER.old_coats.later    # also USU001 at products.mastic.service_temperature.continuous_max

    Given second good
    without products.mastic.overcoat
    products.mastic.binder: chlorinated_rubber    # at systems.deck.layers.gloss.product    # also LAY006 at systems.deck.layers.first.overcoat_interval    # also LAY006 at systems.deck.layers.second.overcoat_interval    # also PRE008 at preparations.abrade.steps.sand.grade
To put right
    Put a coat between that is compatible with both, or choose another product.
"""

from specgen.facts.pairs.layers import layer_pairs
from specgen.facts.pairs.overcoat import overcoating
from specgen.rules.kit import ERROR, Problem, Problems, Spec, System, date, rule


@rule(
    "OVR001",
    on=System,
    severity=ERROR,
    source=overcoating("epoxy_2k", "vinyl").citation,
)
def layer_refused(system: System, spec: Spec, on: date) -> Problems:
    for pair in layer_pairs(system, spec):
        if not pair.verdict.refused or pair.told_elsewhere or pair.stated_by_name or pair.allowed_by_above:
            continue
        what = f"{pair.above.id} over {pair.below.id}: {pair.verdict.spoken()}"
        remedy = f"possible only with: {pair.verdict.asked()}" if pair.verdict.needs else ""
        yield Problem(("layers", pair.above.id, "product"), what, remedy, source=pair.verdict.citation)
