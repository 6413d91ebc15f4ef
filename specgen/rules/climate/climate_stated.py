"""CLI002 A job states its ambient conditions

Checks
    Each job states a value for every ambient condition that one of its products limits. Absolute humidity follows from air temperature and relative humidity and need not be stated.
Why
    A limit that is only on the data sheet is not checked in the shop.
Passes
    jobs.refit.climate: {air: 15..25 degC, surface: 15..30 degC, humidity: 40..75 %, dew_point_margin: min 4 K}

    without products.primer.climate.surface
    without jobs.refit.climate.surface

    products.primer.climate.absolute_humidity: min 5 g/m3
Fails
    without jobs.refit.climate.dew_point_margin    # at jobs.refit.climate.dew_point_margin

    without jobs.refit.climate.air    # at jobs.refit.climate.air

    without jobs.refit.climate.surface    # at jobs.refit.climate.surface

    without jobs.refit.climate.humidity    # at jobs.refit.climate.humidity

    Given second good
    without jobs.lids.climate    # at jobs.lids.climate.air    # at jobs.lids.climate.surface    # at jobs.lids.climate.humidity    # at jobs.lids.climate.dew_point_margin
To put right
    Write the value for the job, as in climate.humidity, within what its products allow.
"""

from specgen.rules.climate import CONDITIONS
from specgen.rules.kit import LOGIC, WARNING, Job, Problem, Problems, Spec, date, rule


@rule("CLI002", on=Job, severity=WARNING, source=LOGIC)
def climate_stated(job: Job, spec: Spec, on: date) -> Problems:
    for name, called in CONDITIONS.items():
        if name == "absolute_humidity":
            continue
        limited = [
            product.id
            for product in spec.products_of(job)
            if product.climate is not None and getattr(product.climate, name) is not None
        ]
        if limited and (job.climate is None or getattr(job.climate, name) is None):
            yield Problem(
                ("climate", name), f"the job states no {called}, but {', '.join(limited)} sets a limit for it"
            )
