"""FLM021 Each coat has a minimum DFT, or a nominal DFT with an acceptance rule

Checks
    Each coat has a DFT, its own or that of its product, or one that follows from its cross coats, its target WFT or full hiding; and of these a minimum, or a nominal DFT of its own that each job with the system assesses by an acceptance rule. Seam sealer, body filler and cavity wax take their thickness from the part.
Why
    A coat without a DFT cannot be ordered, applied or accepted; without a minimum any thin coat meets the specification.
Passes
    systems.cab.layers.base.film: {}
    without products.base.film.min
    products.base.film.hiding: 15 um

    systems.chassis.layers.barrier.film: {nominal: 80 um}
    without products.barrier.film.min
    jobs.refit.inspection.barrier-film: {id: barrier-film, check: Film of the barrier, after: barrier, criterion: {rule: 80-20, nominal: 80 um, max: 120 um}}

    Given a body filler under a primer
    products.barrier.film: {}
    systems.chassis.layers.fill.film: {}
Fails
    systems.chassis.layers.barrier.film: {}    # at systems.chassis.layers.barrier.film
    products.barrier.film: {}

    systems.cab.layers.base.film: {nominal: 20 um, max: 30 um}    # warning at systems.cab.layers.base.film.min
    without products.base.film.min

    systems.cab.layers.base.film: {}    # warning at systems.cab.layers.base.film.min
    products.base.film: {per_pass: 10 um}
    systems.cab.total: {min: 95 um, max: 180 um}

    systems.chassis.layers.barrier.film: {nominal: 80 um}    # warning at systems.chassis.layers.barrier.film.min
    without products.barrier.film.min
    jobs.refit.inspection.barrier-film: {id: barrier-film, check: Film of the barrier, after: barrier, criterion: {text: even}}

    Given second good
    systems.touch.layers.ground.film: {nominal: 1.2 mil, max: 2 mil}    # warning at systems.touch.layers.ground.film.min
    without products.touch-up.film.min
    jobs.lids.inspection.ground.criterion: {text: even}    # also INS012 at jobs.lids.inspection.film.after
To put right
    Write the minimum DFT from the data sheet; or write the nominal DFT and at the inspection point after the coat the acceptance rule that counts from it.
"""

from specgen.facts.job.film_read import criteria_on
from specgen.facts.layer.film import film_limit, film_of_variant
from specgen.rules.kit import ERROR, LOGIC, WARNING, Layer, Problem, Problems, Role, Spec, System, date, rule

# What fills a dent, a seam or a cavity is as thick as these are.
_FILLS = {Role.BODY_FILLER, Role.SEAM_SEALER, Role.CAVITY_WAX}


@rule("FLM021", on=System, severity=ERROR, source=LOGIC)
def film_stated(system: System, spec: Spec, on: date) -> Problems:
    for layer in system.layers:
        if layer.role in _FILLS or film_limit(system, layer, spec, "min") is not None:
            continue
        product, variant = spec.product_of(layer), spec.variant_of(layer)
        if film_of_variant(product, variant, "hiding") is not None:
            continue  # such a coat is applied until it hides, and that film is known
        path = ("layers", layer.id, "film")
        limits = (film_limit(system, layer, spec, limit) for limit in ("nominal", "max"))
        if product.film.nominal is None and not any(limits) and not _follows(layer, spec):
            nobody = f": neither it nor its product {layer.product} states one" if layer.product is not None else ""
            what = f"the coat {layer.id} has no DFT{nobody}"
            yield Problem(path, what)
        elif layer.film.nominal is None or not _assessed(system, layer, spec):
            what = f"the coat {layer.id} has no minimum DFT, and no nominal DFT with an acceptance rule"
            yield Problem((*path, "min"), what, severity=WARNING)


def _follows(layer: Layer, spec: Spec) -> bool:
    """True where a DFT follows from the way the coat is applied."""
    by_passes = film_of_variant(spec.product_of(layer), spec.variant_of(layer), "per_pass")
    return layer.wet_target is not None or (layer.passes is not None and by_passes is not None)


def _assessed(system: System, layer: Layer, spec: Spec) -> bool:
    """True where each job that applies the coat names an acceptance rule with a figure for it."""
    jobs = [criteria for _, criteria in criteria_on(system, layer, spec)]
    return bool(jobs) and all(
        any(one.rule is not None and (one.nominal is not None or one.min is not None) for one in criteria)
        for criteria in jobs
    )
