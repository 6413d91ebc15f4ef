"""CLI005 The air is not too humid

Checks
    The maximum relative humidity of each job, against the general limit of 85 % for products that state no limit. Where every product states a higher limit, exceeding the general limit is a warning.
Why
    In humid air a coat blushes and loses gloss, isocyanate foams with carbon dioxide, and amine blush forms on an epoxy.
Passes
    jobs.refit.climate.humidity: 40..80 %

    products.clear.climate.humidity: 35..85 %
    jobs.refit.climate.humidity: 40..85 %
Fails
    jobs.refit.climate.humidity: 40..90 %    # at jobs.refit.climate.humidity
    products.primer.climate.humidity: 35..95 %
    products.base.climate.humidity: max 95 %
    products.clear.climate.humidity: 35..95 %
    without products.barrier.climate.humidity

    products.clear.climate.humidity: 35..86 %
    products.primer.climate.humidity: 35..86 %
    products.base.climate.humidity: max 86 %
    products.barrier.climate.humidity: max 86 %
    jobs.refit.climate.humidity: 40..86 %    # warning at jobs.refit.climate.humidity

    Given second good
    without products.mastic.climate.humidity
    without products.gloss.climate.humidity
    without jobs.rails.climate.humidity    # note at jobs.rails.climate.humidity

    Given second good
    without products.mastic.climate.humidity
    without products.gloss.climate.humidity
    jobs.rails.climate.humidity: min 40 %    # note at jobs.rails.climate.humidity
To put right
    Warm air and parts by a heater whose burnt gases go outside, or dehumidify where no product needs the water; or postpone the work.
"""

from specgen.facts.pairs.overcoat import table_row
from specgen.rules.kit import ERROR, NOTE, WARNING, Job, Problem, Problems, Quantity, Spec, date, rule, table


@rule("CLI005", on=Job, severity=ERROR, source=table_row("climate_limits", "humidity"))
def humidity_not_too_high(job: Job, spec: Spec, on: date) -> Problems:
    row = table("climate_limits").row("id", "humidity")
    limit = Quantity.of("humidity", int(row["most"]), "%", row["most"])
    path = ("climate", "humidity")
    paints = spec.paints_of(job)
    silent = [
        product.id
        for product in paints
        if product.climate is None or product.climate.humidity is None or product.climate.humidity.high is None
    ]
    kept = job.climate.humidity if job.climate is not None else None
    if kept is None or kept.high is None:
        if silent and len(silent) == len(paints):
            what = (
                f"cannot be assessed: {job.id} and its products state no maximum humidity; the general limit is {limit}"
            )
            yield Problem(path, what, f"write humidity: max {limit}", severity=NOTE)
    elif kept.high > limit and silent:
        what = (
            f"relative humidity up to {kept.high}; {', '.join(silent)} state no limit, and the general limit is {limit}"
        )
        # a product that is not chosen yet may be one made for humid air
        chosen = any(key in spec.products for key in silent)
        yield Problem(path, what, severity=None if chosen else WARNING)
    elif kept.high > limit:
        what = f"relative humidity up to {kept.high} is within the limits of the products but above the general limit, {limit}"
        yield Problem(path, what, severity=WARNING)
