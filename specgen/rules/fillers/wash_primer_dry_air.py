"""FIL003 A wash primer is applied in dry air

Checks
    The maximum relative humidity of a job with a wash primer, against the humidity from which a wash primer blushes. A job without a humidity cannot be assessed.
Why
    Its fast-evaporating alcohol cools the film, moisture condenses on it, the film turns white and the next coat does not adhere.
Passes
    products.barrier.binder: wash_primer
    products.barrier.roles: [wash-primer]
    products.barrier.film: {min: 5 um, nominal: 8 um, max: 12 um}
    products.barrier.overcoat: [{id: primer, next_coat: primer, interval: 30 min..24 h, air: 15 degC}]
    systems.chassis.layers: [{id: wash, role: wash-primer, product: barrier, variant: standard, film: {min: 5 um, nominal: 8 um, max: 12 um}, coats: 1, overcoat_interval: 30 min..24 h}, {id: grey, role: primer, product: primer, variant: grey, film: {min: 40 um, nominal: 60 um, max: 80 um}, passes: 4}]
    jobs.refit.climate.humidity: 40..69 %

    Given a wash primer under a primer
    jobs.refit.climate.humidity: 40..69.9 %

    Given second good
    jobs.rails.climate.humidity: 40..75 %
Fails
    products.barrier.binder: wash_primer
    products.barrier.roles: [wash-primer]
    products.barrier.film: {min: 5 um, nominal: 8 um, max: 12 um}
    products.barrier.overcoat: [{id: primer, next_coat: primer, interval: 30 min..24 h, air: 15 degC}]
    systems.chassis.layers: [{id: wash, role: wash-primer, product: barrier, variant: standard, film: {min: 5 um, nominal: 8 um, max: 12 um}, coats: 1, overcoat_interval: 30 min..24 h}, {id: grey, role: primer, product: primer, variant: grey, film: {min: 40 um, nominal: 60 um, max: 80 um}, passes: 4}]
    jobs.refit.climate.humidity: 40..70 %    # at jobs.refit.climate.humidity

    Given a wash primer under a primer
    without jobs.refit.climate.humidity    # note at jobs.refit.climate.humidity    # also CLI002 at jobs.refit.climate.humidity

    Given a wash primer under a primer
    jobs.refit.climate.humidity: min 40 %    # at jobs.refit.climate.humidity    # also CLI001 at jobs.refit.climate.humidity
To put right
    Dry the air, or add the slower thinner that the manufacturer names.
"""

from specgen.rules.kit import NOTE, WARNING, Concern, Job, Problem, Problems, Spec, date, rule, table

_LIMITS = table("climate_limits")


@rule(
    "FIL003",
    on=Job,
    severity=WARNING,
    concern=Concern.CLIMATE,
    source=_LIMITS.row_citation(_LIMITS.row("id", "wash_primer_humidity")),
)
def wash_primer_dry_air(job: Job, spec: Spec, on: date) -> Problems:
    blush = _LIMITS.row("id", "wash_primer_humidity")
    if not any(spec.product_of(layer).binder == "wash_primer" for layer in spec.layers_of(job)):
        return
    kept, path = job.climate.humidity if job.climate is not None else None, ("climate", "humidity")
    if kept is None:
        what = f"the humidity for the wash primer cannot be assessed: the job states none; a wash primer blushes from {blush['most']} % relative humidity"
        yield Problem(path, what, "write the humidity of the job", NOTE)
    elif kept.high is None or kept.high.to("%") >= int(blush["most"]):
        yield Problem(path, f"relative humidity {kept}; a wash primer blushes from {blush['most']} %")
