"""CLI016 Paint is no colder than the part

Checks
    The temperature of the can or paint that each product of a job states: its upper end is not below the lowest surface temperature of the job.
Why
    Paint colder than the part flows badly, sprays coarse from a can whose pressure has fallen, and draws water onto the film.
Passes
    products.primer.application.can_temperature: 14..18 degC

    products.primer.application.can_temperature: 5..15 degC
    jobs.refit.climate.surface: 15..30 degC
Fails
    products.primer.application.can_temperature: 5..14.9 degC    # at products.primer.application.can_temperature

    Given second good
    products.gloss.application.can_temperature: 40..45 degF    # at products.gloss.application.can_temperature    # also USU001 at products.gloss.application.can_temperature
To put right
    Keep cans and tins at room temperature overnight and state that range; never warm a can on a heater or above 50 °C.
"""

from specgen.facts.memo import memoised
from specgen.rules.kit import WARNING, Problem, Problems, Product, Quantity, Spec, cite, date, rule


@rule("CLI016", on=Product, severity=WARNING, source=cite("MIL-HDBK-1110", "7.4"))
def paint_no_colder_than_part(product: Product, spec: Spec, on: date) -> Problems:
    kept = product.application.can_temperature if product.application is not None else None
    if kept is None or kept.high is None:
        return
    coldest = _coldest_surfaces(spec).get(product.id)
    if coldest is not None and kept.high < coldest:
        what = f"{product.id} is kept at {kept}, colder than the part, which is {coldest} at least"
        yield Problem(("application", "can_temperature"), what)


@memoised
def _coldest_surfaces(spec: Spec) -> dict[str, Quantity]:
    """Of each product the lowest surface temperature of all the jobs that use it."""
    found: dict[str, Quantity] = {}
    for job in spec.jobs.values():
        low = job.climate.surface.low if job.climate is not None and job.climate.surface is not None else None
        if low is not None:
            for product in spec.products_of(job):
                found[product.id] = min(low, found.get(product.id, low))
    return found
