"""CLI004 The part stays over the dew point

Checks
    The dew point margin each job keeps, against the general limit of 3 K. A product that states a smaller margin of its own is taken at its word, with a warning.
Why
    On a part at the dew point water lies that nobody sees; it is shut in below the coat and blisters or lets go.
Passes
    jobs.refit.climate.dew_point_margin: min 4 K

    jobs.refit.climate.dew_point_margin: min 3 K
Fails
    jobs.refit.climate.dew_point_margin: min 2 K    # at jobs.refit.climate.dew_point_margin    # also CLI001 at jobs.refit.climate.dew_point_margin

    jobs.refit.climate.dew_point_margin: min 2.9 K    # warning at jobs.refit.climate.dew_point_margin
    products.primer.climate.dew_point_margin: min 2 K

    without products.primer.climate.dew_point_margin
    without jobs.refit.climate.dew_point_margin    # note at jobs.refit.climate.dew_point_margin

    jobs.refit.climate.dew_point_margin: max 5 K    # at jobs.refit.climate.dew_point_margin    # also CLI001 at jobs.refit.climate.dew_point_margin

    Given second good
    jobs.lids.climate.dew_point_margin: min 5 degF    # warning at jobs.lids.climate.dew_point_margin    # also CLI001 at jobs.lids.climate.dew_point_margin    # also OVR005 at systems.deck.layers.second.blush_wash
To put right
    Warm the part or dry the air until the part is at least 3 K over the dew point.
"""

from specgen.facts.pairs.overcoat import table_row
from specgen.rules.kit import ERROR, NOTE, WARNING, Job, Problem, Problems, Quantity, Spec, date, rule, table


@rule(
    "CLI004",
    on=Job,
    severity=ERROR,
    source=table_row("climate_limits", "dew_point_margin"),
)
def over_the_dew_point(job: Job, spec: Spec, on: date) -> Problems:
    row = table("climate_limits").row("id", "dew_point_margin")
    limit = Quantity.of("temperature_difference", int(row["least"]), "K", row["least"])
    path = ("climate", "dew_point_margin")
    stated = [
        product.climate.dew_point_margin
        for product in spec.products_of(job)
        if product.climate is not None and product.climate.dew_point_margin is not None
    ]
    kept = job.climate.dew_point_margin if job.climate is not None else None
    if kept is None:
        if not stated and job.items:  # a limit of a product that the job does not keep has its own rule
            what = f"cannot judge: {job.id} keeps no dew point margin and its products state none; general is {limit}"
            yield Problem(path, what, f"write dew_point_margin: min {limit}", severity=NOTE)
    elif kept.low is None or kept.low < limit:
        own = any(margin.low is not None and kept.low is not None and margin.low <= kept.low for margin in stated)
        what = f"the part is kept {kept} over the dew point, the general limit is min {limit}"
        yield Problem(path, what, severity=WARNING if own else None)
