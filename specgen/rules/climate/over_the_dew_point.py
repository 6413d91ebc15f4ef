"""CLI004 The surface temperature stays above the dew point

Checks
    The dew point margin of each job, against the general minimum: 3 K, or 5 degF where the margin is written in degF. A smaller margin that a product states for itself is accepted, with a warning.
Why
    At the dew point invisible moisture condenses on the surface. It is trapped beneath the coat, which then blisters or loses adhesion.
Passes
    jobs.refit.climate.dew_point_margin: min 4 K

    jobs.refit.climate.dew_point_margin: min 3 K

    Given second good
    products.gloss.climate.dew_point_margin: min 5 degF
    jobs.lids.climate.dew_point_margin: min 5 degF
Fails
    jobs.refit.climate.dew_point_margin: min 2 K    # at jobs.refit.climate.dew_point_margin    # also CLI001 at jobs.refit.climate.dew_point_margin

    jobs.refit.climate.dew_point_margin: min 2.9 K    # warning at jobs.refit.climate.dew_point_margin
    products.primer.climate.dew_point_margin: min 2 K

    without products.primer.climate.dew_point_margin
    without jobs.refit.climate.dew_point_margin    # note at jobs.refit.climate.dew_point_margin

    jobs.refit.climate.dew_point_margin: max 5 K    # at jobs.refit.climate.dew_point_margin    # also CLI001 at jobs.refit.climate.dew_point_margin

    Given second good
    jobs.lids.climate.dew_point_margin: min 4.9 degF    # at jobs.lids.climate.dew_point_margin    # also CLI001 at jobs.lids.climate.dew_point_margin
To put right
    Warm the part through (no direct-fired or unflued heater: it adds water to the air), or dehumidify the air where no product needs its water, until the surface is at least 3 K (5 degF) above the dew point.
"""

from specgen.facts.job.dew_point import least_margin
from specgen.facts.pairs.overcoat import table_row
from specgen.rules.kit import ERROR, NOTE, WARNING, Job, Problem, Problems, Spec, date, rule


@rule(
    "CLI004",
    on=Job,
    severity=ERROR,
    source=table_row("climate_limits", "dew_point_margin"),
)
def over_the_dew_point(job: Job, spec: Spec, on: date) -> Problems:
    path = ("climate", "dew_point_margin")
    stated = [
        product.climate.dew_point_margin
        for product in spec.products_of(job)
        if product.climate is not None and product.climate.dew_point_margin is not None
    ]
    kept = job.climate.dew_point_margin if job.climate is not None else None
    limit, row = least_margin(kept.low if kept is not None else None)
    if kept is None:
        if not stated and job.items:  # a limit of a product that the job does not keep has its own rule
            what = f"cannot be assessed: {job.id} and its products state no dew point margin; the general minimum is {limit}"
            yield Problem(path, what, f"write dew_point_margin: min {limit}", severity=NOTE)
    elif kept.low is None or kept.low < limit:
        own = any(margin.low is not None and kept.low is not None and margin.low <= kept.low for margin in stated)
        what = f"the surface is kept {kept} above the dew point; the general minimum is {limit}"
        yield Problem(path, what, severity=WARNING if own else None, source=table_row("climate_limits", row["id"]))
