"""FIL012 Body filler is applied in warm conditions

Checks
    The minimum air temperature of a job with body filler, against the temperature from which body filler hardens properly. A body filler that states an air limit of its own from 15 degC on is assessed by that limit alone. A job without an air temperature cannot be assessed.
Why
    Cold body filler sets from the outside in: it stays soft beneath, forms bubbles and pinholes, and rolls up under the abrasive paper.
Passes
    products.barrier.binder: polyester_putty
    products.barrier.roles: [body-filler]
    products.barrier.overcoat: [{id: primer, next_coat: primer, interval: 90 min..24 h, air: 20 degC}]
    systems.chassis.layers: [{id: fill, role: body-filler, product: barrier, variant: standard, film: {min: 60 um, nominal: 80 um, max: 120 um}, coats: 1, overcoat_interval: 2 h..24 h}, {id: grey, role: primer, product: primer, variant: grey, film: {min: 40 um, nominal: 60 um, max: 80 um}, passes: 4}]
    jobs.refit.climate.air: 18..25 degC

    Given second good

    Given a body filler under a primer
    products.barrier.climate.air: 15..35 degC
    products.barrier.drying: [{id: hand, stage: dry-to-handle, time: 2 h, air: 15 degC}, {id: cure, stage: fully-cured, time: 24 h, air: 15 degC}]
    products.barrier.overcoat: [{id: primer, next_coat: primer, interval: 90 min..24 h, air: 15 degC}]
    jobs.refit.climate.air: 15..25 degC
Fails
    products.barrier.binder: polyester_putty
    products.barrier.roles: [body-filler]
    products.barrier.overcoat: [{id: primer, next_coat: primer, interval: 90 min..24 h, air: 15 degC}]
    systems.chassis.layers: [{id: fill, role: body-filler, product: barrier, variant: standard, film: {min: 60 um, nominal: 80 um, max: 120 um}, coats: 1, overcoat_interval: 2 h..24 h}, {id: grey, role: primer, product: primer, variant: grey, film: {min: 40 um, nominal: 60 um, max: 80 um}, passes: 4}]
    jobs.refit.climate.air: 15..25 degC    # at jobs.refit.climate.air

    Given a body filler under a primer
    jobs.refit.climate.air: 17.9..25 degC    # at jobs.refit.climate.air

    Given a body filler under a primer
    jobs.refit.climate.air: max 25 degC    # at jobs.refit.climate.air    # also CLI001 at jobs.refit.climate.air

    Given a body filler under a primer
    without jobs.refit.climate.air    # note at jobs.refit.climate.air    # also CLI002 at jobs.refit.climate.air
To put right
    Warm the panel, the body filler and the room; 22 to 27 degC is best.
"""

from specgen.facts.pairs.families import BODY_FILLER
from specgen.rules.kit import NOTE, WARNING, Concern, Job, Problem, Problems, Product, Spec, date, rule, table

_LIMITS = table("climate_limits")


@rule(
    "FIL012",
    on=Job,
    severity=WARNING,
    concern=Concern.CLIMATE,
    source=_LIMITS.row_citation(_LIMITS.row("id", "filler_temperature")),
)
def filler_warm(job: Job, spec: Spec, on: date) -> Problems:
    warm = _LIMITS.row("id", "filler_temperature")
    fillers = [product for layer in spec.layers_of(job) if (product := spec.product_of(layer)).binder == BODY_FILLER]
    if all(_states_its_own(product) for product in fillers):
        return
    kept, path, least = job.climate.air if job.climate is not None else None, ("climate", "air"), warm["least"]
    if kept is None:
        what = f"the air temperature for body filler cannot be assessed: the job states none; body filler hardens properly from {least} degC"
        yield Problem(path, what, "write the air temperature of the job", NOTE)
    elif kept.low is None or kept.low.to("degC") < int(least):
        stated = kept.low or "not stated"
        yield Problem(path, f"the minimum air temperature is {stated}; body filler hardens properly from {least} degC")


def _states_its_own(product: Product) -> bool:
    """Whether the data sheet says how cold it may be: its word goes before a general figure, unless it lies where no filler hardens."""
    low = product.climate.air.low if product.climate is not None and product.climate.air is not None else None
    return low is not None and low.to("degC") >= int(_LIMITS.row("id", "filler_own_limit")["least"])
