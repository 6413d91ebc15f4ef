"""CLI002 A job states the climate it keeps

Checks
    Each job states a value for every climate limit that one of its products has.
Why
    A limit that is only on the data sheet is not looked at in the shed.
Passes
    jobs.refit.climate: {air: 15..25 degC, surface: 15..30 degC, humidity: 40..75 %, dew_point_margin: min 4 K}

    without products.primer.climate.surface
    without jobs.refit.climate.surface
Fails
    without jobs.refit.climate.dew_point_margin    # at jobs.refit.climate.dew_point_margin

    without jobs.refit.climate.air    # at jobs.refit.climate.air

    without jobs.refit.climate.surface    # at jobs.refit.climate.surface

    without jobs.refit.climate.humidity    # at jobs.refit.climate.humidity

    Given second good
    without jobs.lids.climate    # at jobs.lids.climate.air    # at jobs.lids.climate.surface    # at jobs.lids.climate.humidity    # at jobs.lids.climate.dew_point_margin
To put right
    Write the value in the climate of the job, inside what its products allow.
"""

from specgen.rules.kit import LOGIC, WARNING, Job, Problem, Problems, Spec, date, rule


@rule("CLI002", on=Job, severity=WARNING, source=LOGIC)
def climate_stated(job: Job, spec: Spec, on: date) -> Problems:
    for name in ("air", "surface", "humidity", "dew_point_margin"):
        limited = [
            product.id
            for product in spec.products_of(job)
            if product.climate is not None and getattr(product.climate, name) is not None
        ]
        if limited and (job.climate is None or getattr(job.climate, name) is None):
            called = name.replace("_", " ")
            yield Problem(("climate", name), f"the job keeps no {called}, but {', '.join(limited)} has a limit for it")
