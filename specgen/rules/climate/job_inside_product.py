"""CLI001 The ambient conditions of the job are within those of its products

Checks
    Air and surface temperature, relative humidity and dew point margin during the job, against the application conditions of each product of the job.
Why
    Outside its application conditions a coat loses gloss, blushes, runs or does not cure at all; a moisture-triggered blocked hardener is not released in air that is too dry.
Passes
    jobs.refit.climate: {air: 10..27 degC, surface: 10..35 degC, humidity: 35..80 %, dew_point_margin: min 5 K}

    jobs.refit.climate: {air: 15..25 degC, surface: 10..35 degC, humidity: 35..80 %, dew_point_margin: min 3 K}
Fails
    jobs.refit.climate.air: 5..25 degC    # at jobs.refit.climate.air

    jobs.refit.climate.humidity: 30..75 %    # at jobs.refit.climate.humidity

    jobs.refit.climate.air: 9.9..25 degC    # at jobs.refit.climate.air

    jobs.refit.climate.surface: 15..35.1 degC    # at jobs.refit.climate.surface

    jobs.refit.climate.humidity: 40..80.1 %    # at jobs.refit.climate.humidity

    jobs.refit.climate.dew_point_margin: min 2.9 K    # at jobs.refit.climate.dew_point_margin    # also CLI004 at jobs.refit.climate.dew_point_margin

    Given second good
    jobs.lids.climate.humidity: 40..81 %    # at jobs.lids.climate.humidity
To put right
    Narrow the ambient conditions of the job, heat or dehumidify the air, or choose other products.
"""

from specgen.rules.climate import CONDITIONS
from specgen.rules.kit import ERROR, LOGIC, Job, Problem, Problems, Range, Spec, date, rule, unless_range_rounded


@rule("CLI001", on=Job, severity=ERROR, source=LOGIC)
def job_inside_product(job: Job, spec: Spec, on: date) -> Problems:
    if job.climate is None:
        return
    for name, called in CONDITIONS.items():
        kept: Range | None = getattr(job.climate, name)
        if kept is None:
            continue
        narrower = [
            (product.id, allowed)
            for product in spec.products_of(job)
            if product.climate is not None
            and (allowed := getattr(product.climate, name)) is not None
            and not allowed.holds_all_of(kept)
        ]
        if narrower:
            told = "; ".join(f"{product} allows {allowed}" for product, allowed in narrower)
            problem = Problem(("climate", name), f"{called} {kept} is outside the limits of its products: {told}")
            yield unless_range_rounded(problem, kept, *(allowed for _, allowed in narrower))
