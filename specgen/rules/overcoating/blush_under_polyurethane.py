"""OVR005 Amine blush is washed off epoxy before polyurethane

Checks
    Each polyurethane applied directly over an epoxy, in every job whose air may be colder than epoxies need to cure well and than the epoxy product states an interval for, or more humid than the general limit: amine blush is washed off the epoxy. A dew point margin below the general minimum is told by CLI004.
Why
    In cool humid air the amine of the epoxy migrates to the surface and forms a greasy film; the hardener of the polyurethane reacts with it to a layer of urea, and the topcoat peels.
Passes
    products.base.binder: pu_2k_aliphatic
    products.base.hazards.isocyanates: {monomer_at_limit: no}
    products.base.hazards.supplemental: [EUH204]
    products.base.hazards.health_surveillance: before the first job and every year
    products.base.hazards.protection.spray.respiratory: air-fed half mask, EN 14594

    Given second good
    jobs.rails.climate.air: 50..77 degF

    Given second good
    products.mastic.climate: {air: 40..95 degF, surface: 40..105 degF, humidity: max 85 %, dew_point_margin: min 5 degF}
    products.gloss.climate: {air: 40..95 degF, surface: 40..100 degF, humidity: max 80 %, dew_point_margin: min 6 degF}
    products.mastic.overcoat: [{id: any-warm, next_coat: any, interval: 4 h..72 h, air: 77 degF}, {id: any-cold, next_coat: any, interval: 24 h..8 days, air: 41 degF}, {id: itself, next_coat: itself, interval: 6 h..7 days, air: 41 degF}, {id: itself-warm, next_coat: itself, interval: 3 h..4 days, air: 77 degF}]
    jobs.rails.climate.air: 41..77 degF
    systems.deck.layers.second.overcoat_interval: 24 h..72 h
    products.gloss.drying.hand.air: 40 degF
    products.gloss.drying.cure.air: 40 degF

    Given second good
    products.mastic.climate.dew_point_margin: min 5 degF
    products.gloss.climate.dew_point_margin: min 5 degF
    jobs.rails.climate.dew_point_margin: min 5 degF

    Given second good
    products.mastic.climate.air: 45..95 degF
    products.gloss.climate.air: 45..95 degF
    jobs.lids.climate.air: 49..70 degF
    products.touch-up.climate.air: 45..90 degF
    products.touch-up.overcoat.itself.air: 45 degF
    systems.deck.layers.second.blush_wash: yes
    products.mastic.overcoat.any-cool.air: 45 degF
    products.mastic.overcoat.itself.air: 45 degF
    products.gloss.drying.hand.air: 45 degF
    products.gloss.drying.cure.air: 45 degF
    products.touch-up.drying.hand.air: 45 degF
    products.touch-up.drying.cure.air: 45 degF
Fails
    products.base.binder: pu_2k_aliphatic    # at systems.cab.layers.primer.blush_wash
    products.base.hazards.isocyanates: {monomer_at_limit: no}
    products.base.hazards.supplemental: [EUH204]
    products.base.hazards.health_surveillance: before the first job and every year
    products.base.hazards.protection.spray.respiratory: air-fed half mask, EN 14594
    products.primer.binder: epoxy_2k
    products.primer.climate: {air: 5..30 degC, surface: 10..35 degC, humidity: 35..85 %, dew_point_margin: min 3 K}
    products.base.climate: {air: 5..30 degC, humidity: max 85 %}
    products.clear.climate: {air: 5..30 degC, humidity: 35..80 %}
    products.barrier.climate: {air: 5..35 degC, humidity: max 85 %}
    jobs.refit.climate.air: 8..25 degC    # also REL003 at systems.cab.handle_after    # also REL003 at systems.chassis.handle_after    # also REL004 at systems.cab.service_after    # also REL004 at systems.chassis.service_after    # also WIN004 at systems.cab.layers.base.overcoat_interval    # also WIN004 at systems.cab.layers.primer.overcoat_interval

    Given second good
    products.mastic.climate.air: 45..95 degF
    products.gloss.climate.air: 45..95 degF
    jobs.rails.climate.air: 49..77 degF    # at systems.deck.layers.second.blush_wash    # also REL003 at systems.deck.handle_after    # also REL004 at systems.deck.service_after    # also WIN004 at systems.deck.layers.first.overcoat_interval    # also WIN004 at systems.deck.layers.second.overcoat_interval

    Given second good
    products.mastic.climate.air: 45..95 degF
    products.gloss.climate.air: 45..95 degF
    products.touch-up.climate.air: 45..90 degF
    jobs.lids.climate.air: 49..70 degF    # at systems.deck.layers.second.blush_wash    # also REL003 at systems.deck.handle_after    # also REL003 at systems.touch.handle_after    # also REL004 at systems.deck.service_after    # also REL004 at systems.touch.service_after    # also WIN004 at systems.deck.layers.first.overcoat_interval    # also WIN004 at systems.deck.layers.second.overcoat_interval    # also WIN004 at systems.touch.layers.ground.overcoat_interval

    Given second good
    products.mastic.climate.humidity: max 90 %
    products.gloss.climate.humidity: max 90 %
    jobs.rails.climate.humidity: 40..85.1 %    # at systems.deck.layers.second.blush_wash    # also CLI005 at jobs.rails.climate.humidity
To put right
    Warm air and parts by a heater whose burnt gases go outside; or wash the epoxy with warm water and a little detergent, rinse, test a corner, abrade, and state blush_wash.
"""

from collections.abc import Iterator

from specgen.facts.layer.intervals import air_of, windows_for
from specgen.facts.pairs.layers import LayerPair, layer_pairs
from specgen.facts.pairs.overcoat import table_row, weakest
from specgen.rules.kit import ERROR, WARNING, Job, Problem, Problems, Spec, date, rule, table

_LIMITS = table("climate_limits")


@rule(
    "OVR005",
    on=Job,
    severity=ERROR,
    source=table_row("mechanisms", "amine_blush"),
)
def blush_under_polyurethane(job: Job, spec: Spec, on: date) -> Problems:
    for system in spec.systems_of(job):
        for pair in layer_pairs(system, spec):
            # the tables name the layer of urea wherever isocyanate meets the amine of an epoxy
            if "urea_skin" not in pair.verdict.mechanisms or pair.below.blush_wash:
                continue
            damp = list(_damp(job))
            reasons = [*_cold(job, pair, spec), *damp]
            if not reasons:
                continue
            path = ("systems", system.id, "layers", pair.below.id, "blush_wash")
            what = f"{pair.above.id} is a polyurethane over the epoxy {pair.below.id}, and {job.id} allows {'; '.join(reasons)}"
            ground = weakest(table_row("mechanisms", "amine_blush"), pair.verdict.citation)
            # an epoxy that is not chosen yet may be one made for the cold
            weight = WARNING if pair.below.product is None and not damp else None
            yield Problem(path, what, severity=weight, source=ground, absolute=True)


def _cold(job: Job, pair: LayerPair, spec: Spec) -> Iterator[str]:
    air, cold = air_of(job), _LIMITS.row("id", "epoxy_cure")
    if air is None or air.to("degC") >= int(cold["least"]):
        return
    # an epoxy made for the cold states its interval there, and its maker's word goes before the general figure
    if not any(window.air <= air for window in windows_for(pair.below, pair.above, spec)):
        yield f"air down to {air}, while epoxy cures well from {cold['least']} degC ({_LIMITS.row_citation(cold)})"


def _damp(job: Job) -> Iterator[str]:
    climate = job.climate
    if climate is None:
        return
    damp = _LIMITS.row("id", "humidity")
    if (
        climate.humidity is not None
        and climate.humidity.high is not None
        and climate.humidity.high.to("%") > int(damp["most"])
    ):
        yield f"relative humidity up to {climate.humidity.high}, while the general limit is {damp['most']} %"
