"""CLI013 At every temperature of a product some humidity is both dry and moist enough

Checks
    The minimum absolute humidity of each product, against what air of its lowest temperature holds at its maximum relative humidity.
Why
    Cold air cannot hold much water: at 5 °C and 70 % it holds 4.8 g/m³. A product that asks for 5 g/m³ and at most 70 % cannot be applied there at all.
Passes
    products.primer.climate.absolute_humidity: min 5 g/m3
    jobs.refit.climate.humidity: 45..75 %

    products.primer.climate: {air: 10..30 degC, surface: 10..35 degC, absolute_humidity: max 20 g/m3, humidity: 35..85 %, dew_point_margin: min 3 K}
Fails
    products.primer.climate: {air: 5..30 degC, surface: 10..35 degC, absolute_humidity: min 5 g/m3, humidity: 35..70 %, dew_point_margin: min 3 K}    # at products.primer.climate.absolute_humidity    # also CLI001 at jobs.refit.climate.humidity
    jobs.refit.climate.absolute_humidity: min 5 g/m3
To put right
    Raise the lowest air temperature or correct the minimum absolute humidity.
"""

from specgen.facts.job.moist_air import held
from specgen.rules.kit import ERROR, LOGIC, Problem, Problems, Product, Spec, date, rule
from specgen.trade.known import NotKnown


@rule("CLI013", on=Product, severity=ERROR, source=LOGIC)
def dry_and_moist_enough(product: Product, spec: Spec, on: date) -> Problems:
    climate = product.climate
    if climate is None or climate.absolute_humidity is None or climate.absolute_humidity.low is None:
        return
    air = climate.air.low if climate.air is not None else None
    most = climate.humidity.high if climate.humidity is not None else None
    if air is None or most is None:
        return
    found = held(air, most)
    wanted = climate.absolute_humidity.low
    if not isinstance(found, NotKnown) and found.water.quantity < wanted:
        what = f"{product.id} needs {wanted} of water in the air; air of {air} holds {found.water.printed()} at {most}, the maximum"
        yield Problem(("climate", "absolute_humidity"), what)
