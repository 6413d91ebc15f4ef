"""CLI006 The air temperature is suitable where a product states no range

Checks
    The air temperature of each job, for every product that states no range of its own: on vehicles against the general range of 10 to 32 degC, which is a warning; elsewhere against that of painting in general, 7 to 32 degC, which is a note, for other trades paint in colder and warmer air.
Why
    In the cold a coat does not level and a two-pack stops curing; in the heat the coat dries before it levels.
Passes
    jobs.refit.climate.air: 12..27 degC
    products.primer.overcoat.any-warm.air: 10 degC
    products.base.overcoat.clear.air: 10 degC

    Given second good
    without products.touch-up.climate.air
    jobs.lids.climate.air: 50..70 degF
    products.touch-up.overcoat.itself.air: 50 degF

    Given second good
    without products.gloss.climate.air
    products.mastic.climate.air: 50..100 degF
    jobs.rails.climate.air: 55..89.6 degF
    systems.deck.layers.first.overcoat_interval: 6 h..72 h
Fails
    jobs.refit.climate.air: 10..34 degC    # at jobs.refit.climate.air
    without products.primer.climate.air
    without products.base.climate.air
    without products.clear.climate.air
    without products.barrier.climate.air
    without systems.cab.layers.primer.overcoat_interval    # also LAY007 at systems.cab.layers.primer.overcoat_interval    # also WIN004 at systems.cab.layers.base.overcoat_interval    # also WIN004 at systems.cab.layers.base.overcoat_interval

    Given second good
    without products.gloss.climate.air
    jobs.rails.vehicles: [F-1]
    jobs.rails.climate.air: 55..90 degF    # at jobs.rails.climate.air
    systems.deck.layers.first.overcoat_interval: 6 h..72 h

    Given second good
    without products.gloss.climate.air
    jobs.rails.climate.air: 55..90 degF    # note at jobs.rails.climate.air
    systems.deck.layers.first.overcoat_interval: 6 h..72 h

    Given second good
    without products.touch-up.climate.air
    products.mastic.climate: {air: 40..95 degF, surface: 40..105 degF, humidity: max 85 %, dew_point_margin: min 5 degF}
    products.gloss.climate: {air: 40..95 degF, surface: 40..100 degF, humidity: max 80 %, dew_point_margin: min 6 degF}
    jobs.lids.vehicles: [F-1]
    jobs.lids.climate.air: 49 degF..70 degF    # at jobs.lids.climate.air    # also OVR005 at systems.deck.layers.second.blush_wash    # also REL003 at systems.deck.handle_after    # also REL003 at systems.touch.handle_after    # also REL004 at systems.deck.service_after    # also REL004 at systems.touch.service_after    # also WIN004 at systems.deck.layers.first.overcoat_interval    # also WIN004 at systems.deck.layers.second.overcoat_interval    # also WIN004 at systems.touch.layers.ground.overcoat_interval

    Given second good
    without products.gloss.climate.air
    without products.mastic.climate.air
    without jobs.rails.climate.air    # note at jobs.rails.climate.air

    Given second good
    without products.gloss.climate.air
    products.mastic.climate.air: min 50 degF
    jobs.rails.climate.air: min 55 degF    # note at jobs.rails.climate.air

    Given second good
    without products.gloss.climate.air
    products.mastic.climate.air: max 95 degF
    jobs.rails.climate.air: max 77 degF    # note at jobs.rails.climate.air
To put right
    Warm or cool the shop (no direct-fired or unflued heater and no ignition source where paint is sprayed or dries), postpone the work, or obtain the range from the manufacturer.
"""

from specgen.facts.pairs.overcoat import table_row
from specgen.rules.kit import NOTE, WARNING, Job, Problem, Problems, Quantity, Spec, date, rule, table


@rule(
    "CLI006",
    on=Job,
    severity=WARNING,
    source=table_row("climate_limits", "temperature_default"),
)
def air_for_painting(job: Job, spec: Spec, on: date) -> Problems:
    vehicles = bool(job.vehicles)
    name = "temperature_default" if vehicles else "temperature"
    row = table("climate_limits").row("id", name)
    least, most = (Quantity.of("temperature", int(row[name]), "degC", row[name]) for name in ("least", "most"))
    silent = [product.id for product in spec.paints_of(job) if product.climate is None or product.climate.air is None]
    if not silent:
        return
    path, general = ("climate", "air"), f"{least} to {most}"
    kept = job.climate.air if job.climate is not None else None
    if kept is None:
        # where another product has a limit, the rule on stating the climate asks for it
        if len(silent) == len(spec.paints_of(job)):
            what = f"cannot be assessed: {job.id} and its products state no air temperature; the general range is {general}"
            yield Problem(path, what, severity=NOTE)
    elif kept.low is None or kept.low < least or kept.high is None or kept.high > most:
        what = f"air temperature {kept}; {', '.join(silent)} state no range, and the general range is {general}"
        yield Problem(path, what, severity=None if vehicles else NOTE, source=table_row("climate_limits", name))
