"""CLI007 A moisture-curing product states a minimum humidity

Checks
    Each product that is moisture-curing or has a moisture-triggered hardener: its application conditions state a minimum relative humidity or, better, a minimum absolute humidity.
Why
    In air that is too dry the hardener is not released and the film stays soft for weeks. No public figure is known, so only the manufacturer can state it.
Passes
    products.primer.climate.humidity: 40..85 %

    products.primer.climate: {air: 10..30 degC, surface: 10..35 degC, humidity: max 85 %, absolute_humidity: min 5 g/m3, dew_point_margin: min 3 K}
Fails
    products.clear.climate.humidity: max 80 %    # at products.clear.climate.humidity

    products.primer.climate.humidity: max 85 %    # at products.primer.climate.humidity

    products.barrier.curing: moisture-cured    # at products.barrier.climate.humidity    # also CUR001 at products.barrier.pot_life    # also CUR003 at products.barrier.application.mixing
To put right
    State the minimum humidity from the manufacturer's trials, as in 35..80 %, or absolute_humidity: min 5 g/m3; in dry winter air warm the booth and the parts first where they are cold, then humidify, then check the dew point margin; heating alone adds no water.
"""

from specgen.facts.pairs.overcoat import table_row
from specgen.facts.product.curing import cured_by_moisture
from specgen.rules.kit import WARNING, Problem, Problems, Product, Spec, date, rule


@rule(
    "CLI007",
    on=Product,
    severity=WARNING,
    source=table_row("climate_limits", "moisture_cure_humidity"),
)
def least_humidity_stated(product: Product, spec: Spec, on: date) -> Problems:
    if not cured_by_moisture(product):
        return
    climate = product.climate
    if climate is not None and climate.absolute_humidity is not None and climate.absolute_humidity.low is not None:
        return
    humidity = climate.humidity if climate is not None else None
    if humidity is not None and humidity.low is None:
        what = f"{product.id} is moisture-curing but states no minimum humidity, only {humidity}"
        yield Problem(("climate", "humidity"), what)
