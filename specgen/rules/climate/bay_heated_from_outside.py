"""CLI014 A bay heated with outside air has the humidity that it can have

Checks
    Where a job states the outside air its bay is heated from and no humidifier: the minimum relative humidity it counts on, against what that outside air comes to at the lowest inside temperature, with five points to spare.
Why
    Warming adds no water: air of 0 °C and 80 % is air of 21 % at 20 °C. Wet floors and people add some, hence a warning.
Passes
    jobs.refit.heated_from: {air: 10 degC, humidity: 80 %}

    jobs.refit.heated_from: {air: 0 degC, humidity: 80 %, humidifier: yes}

    jobs.refit.heated_from: {air: 5 degC, humidity: 85 %}
Fails
    jobs.refit.heated_from: {air: 0 degC, humidity: 80 %}    # at jobs.refit.climate.humidity

    jobs.refit.heated_from: {air: 0 degC, humidity: 80 %, humidifier: no}    # at jobs.refit.climate.humidity
To put right
    Measure inside and write what is found, or humidify; a heater alone does not make up the water.
"""

from specgen.facts.job.moist_air import warmed
from specgen.rules.kit import LOGIC, WARNING, Job, Problem, Problems, Quantity, Spec, date, rule, table
from specgen.trade.known import NotKnown


@rule("CLI014", on=Job, severity=WARNING, source=LOGIC)
def bay_heated_from_outside(job: Job, spec: Spec, on: date) -> Problems:
    outside = job.heated_from
    if outside is None or outside.humidifier is True or job.climate is None:
        return
    air = job.climate.air.low if job.climate.air is not None else None
    least = job.climate.humidity.low if job.climate.humidity is not None else None
    if air is None or least is None or air <= outside.air:
        return
    spare = Quantity.of("humidity", int(table("climate_limits").row("id", "moist_from_inside")["most"]), "%")
    inside = warmed(outside.air, outside.humidity, air)
    if not isinstance(inside, NotKnown) and least.base > inside.quantity.base + spare.base:
        what = (
            f"outside air of {outside.air} and {outside.humidity} is air of {inside.printed()} once it is warmed to {air}; "
            f"the job counts on {least} at least"
        )
        yield Problem(("climate", "humidity"), what)
