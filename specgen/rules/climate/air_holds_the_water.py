"""CLI012 The air holds the water that releases the hardener

Checks
    The water in the coldest and driest air of each job, in g/m³, against the minimum absolute humidity that its products state. A job that states its own absolute humidity is held to that. Where air temperature or humidity has no lower end it cannot be assessed.
Why
    The hardener is released by water, not by relative humidity: 40 % is 3.8 g/m³ at 10 °C and 9.2 g/m³ at 25 °C. Outside air of 0 °C warmed in a bay to 20 °C passes every limit on condensation and leaves the film soft. Heating alone adds no water.
Passes
    products.primer.climate.absolute_humidity: min 5 g/m3
    jobs.refit.climate.humidity: 45..75 %

    products.primer.climate.absolute_humidity: min 6 g/m3
    jobs.refit.climate.absolute_humidity: min 6 g/m3

    products.primer.climate.absolute_humidity: max 20 g/m3
Fails
    products.primer.climate.absolute_humidity: min 6 g/m3    # at jobs.refit.climate.humidity

    products.primer.climate.absolute_humidity: min 5.2 g/m3    # at jobs.refit.climate.humidity

    products.primer.climate.absolute_humidity: min 12 g/m3    # at jobs.refit.climate.humidity    # also CLI013 at products.primer.climate.absolute_humidity

    products.primer.climate.absolute_humidity: min 5 g/m3    # note at jobs.refit.climate.humidity
    jobs.refit.climate.humidity: max 75 %    # also CLI001 warning at jobs.refit.climate.humidity
To put right
    Where the limits allow it, humidify. Where humidifying would break the humidity limit or bring the surface too near to the dew point, warm air and parts first, then humidify, then check both. No direct-fired or unflued heater and no ignition source where paint is sprayed or dries.
"""

from specgen.facts.job.moist_air import HEATERS, advice_on_dry_air, driest, limits, water_wanted
from specgen.rules.kit import ERROR, LOGIC, NOTE, Job, Problem, Problems, Spec, date, rule
from specgen.trade.known import NotKnown


@rule("CLI012", on=Job, severity=ERROR, source=LOGIC)
def air_holds_the_water(job: Job, spec: Spec, on: date) -> Problems:
    asked = water_wanted(job, spec)
    if job.climate is None or asked is None:
        return
    if job.climate.absolute_humidity is not None and job.climate.absolute_humidity.low is not None:
        return  # what the job states itself is held against its products with the other limits
    product, wanted = asked
    found = driest(job.climate)
    path = ("climate", "humidity")
    if isinstance(found, NotKnown):
        what = f"cannot be assessed: {product.id} needs {wanted} of water in the air, and {found.why}"
        yield Problem(path, what, f"write absolute_humidity: min {wanted} for the job", severity=NOTE)
    elif found.water.quantity < wanted:
        what = (
            f"air of {found.air} and {found.humidity} holds {found.water.printed()} of water; "
            f"{product.id} needs {wanted} to release its hardener"
        )
        advice = advice_on_dry_air(found.air, wanted, limits(job, spec))
        yield Problem(path, what, f"{advice}. {HEATERS}")
