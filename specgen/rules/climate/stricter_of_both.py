"""CLI014 Humidity limit and dew point margin: the stricter one is named

Checks
    Where a job states a maximum relative humidity and a dew point margin, and its surfaces may be as cold as its coldest air: which humidity the margin leaves at that temperature.
Why
    The two are not one limit. With surface and air alike, 3 K above the dew point means 80.9 % at 5 °C, 82.9 % at 20 °C and 84.0 % at 30 °C, so that air of 85 % breaks it.
Passes
    jobs.refit.climate.humidity: 40..81 %
    products.clear.climate.humidity: 35..81 %

    jobs.refit.climate: {air: 15..25 degC, surface: 17..30 degC, humidity: 40..85 %, dew_point_margin: min 3 K}
    products.clear.climate.humidity: 35..85 %
Fails
    jobs.refit.climate.humidity: 40..85 %    # note at jobs.refit.climate.humidity
    products.clear.climate.humidity: 35..85 %
To put right
    Keep the stricter of the two, or have the surfaces warmer than the air.
"""

from specgen.facts.job.moist_air import held, humidity_left
from specgen.rules.kit import LOGIC, NOTE, Job, Problem, Problems, Spec, date, rule
from specgen.trade.known import NotKnown


@rule("CLI014", on=Job, severity=NOTE, source=LOGIC)
def stricter_of_both(job: Job, spec: Spec, on: date) -> Problems:
    climate = job.climate
    if climate is None or climate.air is None or climate.humidity is None or climate.dew_point_margin is None:
        return
    air, most, margin = climate.air.low, climate.humidity.high, climate.dew_point_margin.low
    surface = climate.surface.low if climate.surface is not None else air
    if air is None or most is None or margin is None or surface is None or surface > air:
        return
    left = humidity_left(air, margin)
    if not isinstance(left, NotKnown) and not isinstance(held(air, most), NotKnown) and left < most:
        what = f"at {air} a margin of {margin} above the dew point leaves {left} for a surface as cold as the air; {most} is allowed"
        yield Problem(("climate", "humidity"), what)
