"""CLI001 The ambient conditions of the job are within those of its products

Checks
    Air and surface temperature, relative humidity and dew point margin during the job, against the application conditions of each product of the job, end by end. A dew point margin of 5 degF and one of 3 K are taken as one. An end that the products limit and the job leaves open is noted. It is a warning where a minimum humidity is left open for a product cured by moisture, or a minimum alone is stated though none is.
Why
    Outside its application conditions a coat loses gloss, blushes, runs or does not cure at all; a moisture-triggered blocked hardener is not released in air that is too dry.
Passes
    jobs.refit.climate: {air: 10..27 degC, surface: 10..35 degC, humidity: 35..80 %, dew_point_margin: min 5 K}
    products.primer.overcoat.any-warm.air: 10 degC
    products.base.overcoat.clear.air: 10 degC

    jobs.refit.climate: {air: 15..25 degC, surface: 10..35 degC, humidity: 35..80 %, dew_point_margin: min 3 K}

    jobs.refit.climate.dew_point_margin: 3..8 K

    products.primer.climate.surface: min 10 degC
    jobs.refit.climate.surface: min 15 degC

    Given second good
    jobs.lids.climate.humidity: max 70 %

    Given second good
    products.gloss.climate.dew_point_margin: min 3 K
    jobs.lids.climate.dew_point_margin: min 5 degF
Fails
    jobs.refit.climate.air: 5..25 degC    # at jobs.refit.climate.air    # also REL003 at systems.cab.handle_after    # also REL003 at systems.chassis.handle_after    # also REL004 at systems.cab.service_after    # also REL004 at systems.chassis.service_after    # also WIN004 at systems.cab.layers.base.overcoat_interval    # also WIN004 at systems.cab.layers.primer.overcoat_interval

    jobs.refit.climate.air: min 15 degC    # note at jobs.refit.climate.air

    jobs.refit.climate.surface: max 30 degC    # note at jobs.refit.climate.surface

    jobs.refit.climate.surface: max 36 degC    # at jobs.refit.climate.surface    # note at jobs.refit.climate.surface

    jobs.refit.climate.humidity: max 75 %    # warning at jobs.refit.climate.humidity

    jobs.refit.climate.humidity: min 75 %    # note at jobs.refit.climate.humidity

    Given second good
    jobs.lids.climate.humidity: min 75 %    # warning at jobs.lids.climate.humidity

    jobs.refit.climate.humidity: min 81 %    # at jobs.refit.climate.humidity    # note at jobs.refit.climate.humidity    # also USU001 at jobs.refit.climate.humidity

    jobs.refit.climate.humidity: 30..75 %    # at jobs.refit.climate.humidity

    jobs.refit.climate.air: 9.9..25 degC    # at jobs.refit.climate.air    # also REL003 at systems.cab.handle_after    # also REL003 at systems.chassis.handle_after    # also REL004 at systems.cab.service_after    # also REL004 at systems.chassis.service_after    # also WIN004 at systems.cab.layers.base.overcoat_interval    # also WIN004 at systems.cab.layers.primer.overcoat_interval

    jobs.refit.climate.surface: 15..35.1 degC    # at jobs.refit.climate.surface

    jobs.refit.climate.humidity: 40..80.1 %    # at jobs.refit.climate.humidity

    jobs.refit.climate.dew_point_margin: min 2.9 K    # at jobs.refit.climate.dew_point_margin    # also CLI004 at jobs.refit.climate.dew_point_margin

    Given second good
    jobs.lids.climate.humidity: 40..81 %    # at jobs.lids.climate.humidity
To put right
    Narrow the ambient conditions of the job and state both ends, put the air right as `specgen climate` advises (air that is too dry is never put right by heating alone), or choose other products.
"""

from specgen.facts.job.dew_point import least_margin
from specgen.facts.product.curing import cured_by_moisture
from specgen.rules.climate import CONDITIONS
from specgen.rules.kit import (
    ERROR,
    LOGIC,
    NOTE,
    WARNING,
    Job,
    Problem,
    Problems,
    Product,
    Range,
    Spec,
    date,
    rule,
    unless_range_rounded,
)


@rule("CLI001", on=Job, severity=ERROR, source=LOGIC)
def job_inside_product(job: Job, spec: Spec, on: date) -> Problems:
    if job.climate is None:
        return
    for name, called in CONDITIONS.items():
        kept: Range | None = getattr(job.climate, name)
        if kept is None:
            continue
        limits = {
            product.id: (product, allowed)
            for product in spec.products_of(job)
            if product.climate is not None and (allowed := getattr(product.climate, name)) is not None
        }
        narrower = [
            (key, allowed)
            for key, (_, allowed) in limits.items()
            if _goes_beyond(kept, allowed) and not _both_general(name, kept, allowed)
        ]
        if narrower:
            told = "; ".join(f"{product} allows {allowed}" for product, allowed in narrower)
            problem = Problem(("climate", name), f"{called} {kept} is outside the limits of its products: {told}")
            yield unless_range_rounded(problem, kept, *(allowed for _, allowed in narrower))
        yield from _left_open(name, called, kept, list(limits.values()))


def _goes_beyond(kept: Range, allowed: Range) -> bool:
    """True where an end that both state lies outside what is allowed."""
    too_low = kept.low is not None and allowed.low is not None and kept.low < allowed.low
    too_high = kept.high is not None and allowed.high is not None and kept.high > allowed.high
    apart = kept.low is not None and allowed.high is not None and kept.low > allowed.high
    return too_low or too_high or apart or _all_below(kept, allowed)


def _all_below(kept: Range, allowed: Range) -> bool:
    return kept.high is not None and allowed.low is not None and kept.high < allowed.low


def _both_general(name: str, kept: Range, allowed: Range) -> bool:
    """True for a dew point margin where each side keeps the general minimum of its own unit: 5 degF beside 3 K."""
    if name != "dew_point_margin" or kept.low is None or allowed.low is None:
        return False
    return kept.low >= least_margin(kept.low)[0] and allowed.low <= least_margin(allowed.low)[0]


def _left_open(name: str, called: str, kept: Range, limits: list[tuple[Product, Range]]) -> Problems:
    for end, word in (("low", "minimum"), ("high", "maximum")):
        held = [(product, allowed) for product, allowed in limits if getattr(allowed, end) is not None]
        if getattr(kept, end) is not None or not held:
            continue
        told = "; ".join(f"{product.id} allows {allowed}" for product, allowed in held)
        moist = any(cured_by_moisture(product) for product, _ in limits)
        # air that is too dry harms no other paint: a minimum in place of the maximum is a slip
        grave = name == "humidity" and moist == (end == "low")
        what = f"the job states no {word} {called}, only {kept}, and the limit of its products holds: {told}"
        yield Problem(("climate", name), what, severity=WARNING if grave else NOTE)
