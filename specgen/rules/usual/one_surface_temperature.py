"""USU005 Application temperatures of a product agree

Checks
    The surface temperature of a product's application conditions, against the one among its application values; the lower ends of air and surface temperature of the application conditions, against each other.
Why
    Of two figures for one thing it is unclear which one applies, and at its coldest the air is about as cold as the part in it.
Passes
    products.primer.application.surface_temperature: 10..35 degC

    products.primer.climate.surface: 15..35 degC
    jobs.refit.climate.surface: 15..30 degC

    products.base.application.surface_temperature: 5..40 degC
Fails
    products.primer.application.surface_temperature: 2.5..35 degC    # at products.primer.application.surface_temperature

    products.primer.climate.air: 4.9..30 degC    # at products.primer.climate.surface

    Given second good
    products.gloss.application.surface_temperature: 50..95 degF    # at products.gloss.application.surface_temperature
To put right
    Write the surface temperature once, under the application conditions, and correct the limit that is wrong.
"""

from specgen.facts.usual import proportion
from specgen.rules.kit import (
    LOGIC,
    PRACTICE,
    WARNING,
    Problem,
    Problems,
    Product,
    Spec,
    date,
    rule,
    unless_range_rounded,
)


@rule("USU005", on=Product, severity=WARNING, source=LOGIC)
def one_surface_temperature(product: Product, spec: Spec, on: date) -> Problems:
    conditions = product.climate
    if conditions is None:
        return
    surface = conditions.surface
    again = product.application.surface_temperature if product.application is not None else None
    if surface is not None and again is not None and surface != again:
        what = f"surface temperature {again}; the application conditions state {surface}"
        problem = Problem(("application", "surface_temperature"), what)
        yield unless_range_rounded(problem, again, surface)
    air = conditions.air
    if air is None or surface is None or air.low is None or surface.low is None:
        return
    apart = proportion("surface")
    if abs(air.low.to("degC") - surface.low.to("degC")) > apart:
        what = f"the surface may be as cold as {surface.low} and the air as cold as {air.low}"
        yield Problem(("climate", "surface"), f"{what}; more than {apart} K apart is unusual", source=PRACTICE)
